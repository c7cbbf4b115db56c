// The answer in one line at the lower edge, as long as the result is out of view below. A tap goes there, or
// to the first field that needs another value.

import { firstWrong } from "./form.js";

let watcher;

export function openBrief(form) {
  const line = document.querySelector("#brief");
  const result = document.querySelector(".result");
  watcher?.disconnect(); // the page before this one is gone
  watcher = new IntersectionObserver(([seen]) => {
    line.hidden = seen.isIntersecting || seen.boundingClientRect.top < 0 || !line.textContent;
  });
  watcher.observe(result);
  line.onclick = () => {
    const still = matchMedia("(prefers-reduced-motion: reduce)").matches;
    const place = firstWrong(form) ?? document.querySelector("#result-title");
    place.closest("details")?.setAttribute("open", ""); // closed again by hand, it could not be reached
    place.focus({ preventScroll: true });
    place.scrollIntoView({ behavior: still ? "auto" : "smooth", block: place.matches("h2") ? "start" : "center" });
  };
  // Not for what a tap brings the focus to before its click: the page would move under the thumb, and the tap be lost.
  form.addEventListener("focusin", ({ target }) => target.matches(":focus-visible") && clear(target));
}

/** What is typed into, its hint and its problem must not lie under the line, nor under the doors below it. */
export function clear(entry) {
  (entry?.closest(".field") ?? entry)?.scrollIntoView({ block: "nearest" });
}

export function sayBriefly({ level, text }) {
  const line = document.querySelector("#brief");
  line.textContent = text;
  line.className = `brief ${level}`;
  const { top, bottom } = document.querySelector(".result").getBoundingClientRect();
  line.hidden = top < innerHeight || bottom < 0;
}
