// The answer in one line at the lower edge, as long as its verdict is out of view. A tap goes to what is wrong
// or still needed, or else to the verdict.

import { firstNeeded, firstWrong } from "./form.js";

const LEAST_SEEN = 0.6; // of the verdict's height; what is less cannot be read
const BARS = 116; // px at the lower edge that the doors and this line take

let watcher;

export function openBrief(form) {
  const line = document.querySelector("#brief");
  watcher?.disconnect(); // the page before this one is gone
  watcher = new IntersectionObserver((seen) => show(line, seen.at(-1)), { threshold: [0, LEAST_SEEN, 1], rootMargin: `0px 0px -${BARS}px` });
  line.onclick = () => goTo(firstWrong(form) ?? neededOf(form) ?? document.querySelector("#result-title"));
  document.querySelector("#still").onclick = line.onclick;
  // Not for what a tap brings the focus to before its click: the page would move under the thumb, and the tap be lost.
  form.addEventListener("focusin", ({ target }) => target.matches(":focus-visible") && clear(target));
}

function neededOf(form) {
  return firstNeeded(form, document.querySelector("#still").dataset.paths?.split(" ").filter(Boolean));
}

function show(line, { isIntersecting, intersectionRatio, boundingClientRect: box }) {
  const read = isIntersecting && (intersectionRatio >= LEAST_SEEN || box.height > innerHeight / 2);
  line.hidden = read || !line.textContent;
  line.classList.toggle("up", box.top < 0);
  keepClear(line);
}

/** The verdict: the first note of the answer, or its first row, or what is said where no answer stands. */
function verdict() {
  return document.querySelector("#still:not([hidden])") ?? document.querySelector("#answer:not([hidden]) #lead > li")
    ?? document.querySelector("#answer:not([hidden]) #rows > tr") ?? document.querySelector("#status");
}

export function goTo(place) {
  const still = matchMedia("(prefers-reduced-motion: reduce)").matches;
  place.closest("details")?.setAttribute("open", ""); // closed, it could not be reached
  place.focus({ preventScroll: true });
  place.scrollIntoView({ behavior: still ? "auto" : "smooth", block: place.matches("h2") ? "start" : "center" });
}

/** What is typed into, its hint and its problem must not lie under the line, nor under the doors below it. */
export function clear(entry) {
  (entry?.closest(".field") ?? entry)?.scrollIntoView({ block: "nearest" });
}

/** Show a line with its level; no text takes it away. What is being typed into stays clear of it. */
export function sayBriefly({ level, text }) {
  const line = document.querySelector("#brief");
  line.textContent = text;
  line.className = `brief ${level}`;
  if (!text) line.hidden = true;
  watcher.disconnect();
  watcher.observe(verdict()); // tells at once how it stands
  keepClear(line);
}

/** The field in hand, with what is said below it, is moved above the line. */
function keepClear(line) {
  const field = document.activeElement?.closest("#inputs .field");
  if (!field || line.hidden) return;
  const { bottom, top } = field.getBoundingClientRect();
  const edge = line.getBoundingClientRect().top;
  if (bottom > edge && top < innerHeight) scrollBy(0, bottom - edge + 4);
}
