// What have I got: answers are tapped, the address holds them, and Python paints the next question and the ranking.

import { ask, start } from "./runtime.js";
import { choosePlace, chosenPlace } from "./device-choices.js";
import { writeEntry } from "./history-entry.js";
import { tankHere } from "./shelf/shelf-start.js";
import { onSwitch } from "./shelf/switch.js";
import { painted } from "./trust.js";

const PAUSE = 400; // ms after the last letter of a label before Python is asked
const LISTED = "unseen"; // of traits, with commas between them in the address

let page; // the naming that is open
let listens = false;

export function open() {
  const place = document.querySelector("#identify-at-tank");
  const here = { place, count: 0, ready: false, given: new URLSearchParams(), timer: 0, moved: false };
  page = here;
  place.addEventListener("click", (event) => tap(here, event.target));
  place.addEventListener("submit", (event) => measured(here, event));
  find(here, "#naming-name").addEventListener("input", () => {
    clearTimeout(here.timer);
    here.timer = setTimeout(() => say(here, { label: find(here, "#naming-name").value.trim() }, "replace"), PAUSE);
  });
  find(here, "#naming-place").addEventListener("change", ({ target }) => {
    choosePlace(target.value);
    say(here, { place: target.value }, "replace");
  });
  if (!listens) addEventListener("popstate", () => page.place.isConnected && arrive(page));
  listens = true;
  arrive(here);
  placeOf(here);
  onSwitch(() => placeOf(here, true));
  start().then(() => { here.ready = true; answer(here); }, () => tell(here, "Python could not start. The list by form, below, needs no Python."));
}

function find(here, name) {
  return here.place.querySelector(name);
}

function tell(here, text) {
  find(here, "#naming-said").textContent = text;
}

/** Take over what the address says. */
function arrive(here) {
  here.given = new URLSearchParams(location.search);
  show(here);
  answer(here);
}

/** The law is that of the tank's place, or of the place that was chosen before; an address that names one wins. */
async function placeOf(here, switched = false) {
  const tank = await tankHere().catch(() => null);
  const known = tank?.place || (switched ? "" : chosenPlace());
  if (!here.place.isConnected || !known || (here.given.has("place") && !switched)) return;
  say(here, { place: known }, "replace");
}

function show(here) {
  find(here, "#naming-name").value = here.given.get("label") ?? "";
  find(here, "#naming-place").value = here.given.get("place") ?? "";
}

/** Change some inputs, an empty one goes; put them into the address, and ask. */
function say(here, change, how = "push") {
  for (const [key, value] of Object.entries(change)) {
    if (value) here.given.set(key, value);
    else here.given.delete(key);
  }
  remember(here, how);
  answer(here);
}

function remember(here, how) {
  const query = String(here.given).replaceAll("%2C", ",");
  writeEntry(here.place, location.pathname + (query ? `?${query}` : ""), { how });
}

function tap(here, target) {
  const button = target.closest("button");
  if (!button) return;
  const { set, unseen, drop } = button.dataset;
  here.moved = Boolean(set || unseen);
  if (set) say(here, Object.fromEntries(new URLSearchParams(set)));
  else if (unseen) say(here, { [LISTED]: [...listed(here), unseen].join() });
  else if (drop) takeBack(here, drop);
  else if (button.id === "naming-again") startAgain(here);
}

function listed(here) {
  return (here.given.get(LISTED) ?? "").split(",").filter(Boolean);
}

function takeBack(here, key) {
  const [list, trait] = key.split(".");
  if (list === LISTED) say(here, { [LISTED]: listed(here).filter((one) => one !== trait).join() });
  else say(here, { [key]: "" });
}

function startAgain(here) {
  const place = here.given.get("place") ?? "";
  here.given = new URLSearchParams(place ? { place } : {});
  remember(here, "push");
  show(here);
  answer(here);
}

function measured(here, event) {
  event.preventDefault();
  const field = event.target.querySelector("[name^='traits.']");
  if (!field?.value.trim()) return;
  here.moved = true;
  say(here, { [field.name]: field.value.trim() });
}

/** Ask Python for the next question and the ranking, and put its pieces into the page. */
async function answer(here) {
  if (!here.ready) {
    if (String(here.given)) tell(here, "Noted. Python is loading; it puts the plants in order.");
    return;
  }
  const number = ++here.count;
  let reply;
  try {
    reply = await ask({ calculator: "identify", given: Object.fromEntries(here.given), units: "metric", questioning: {} });
  } catch (wrong) {
    tell(here, `Python failed on this: ${wrong.message}`);
    return;
  }
  if (number !== here.count || here !== page || !here.place.isConnected) return;
  paint(here, reply);
}

function paint(here, { questioning: { anything, status, pieces }, left_out: leftOut, problems = {} }) {
  const open = [...here.place.querySelectorAll("details[open][data-plant], details[open][id]")].map((one) => one.dataset.plant ?? one.id);
  for (const [name, html] of Object.entries(pieces)) find(here, `#naming-${name}`).innerHTML = painted(html);
  for (const one of here.place.querySelectorAll("#naming-result details")) one.open ||= open.includes(one.dataset.plant ?? one.id);
  find(here, "#naming-result").hidden = !anything && !pieces.answers && !pieces.first;
  tell(here, [leftOut, ...Object.values(problems).map((text) => `${text}.`), status].filter(Boolean).join(" "));
  if (here.moved) find(here, "#naming-question").focus({ preventScroll: true });
  if (here.moved) here.place.scrollIntoView({ block: "start" });
  here.moved = false;
  here.place.dataset.answered = "1";
}
