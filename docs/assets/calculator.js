// A calculator's page: passes what is typed to Python, paints what comes back. No formula stands here.

import { atMost } from "./at-most.js";
import { writeEntry } from "./history-entry.js";
import { ask, start } from "./runtime.js";
import { questionOf } from "./blank-question.js";
import { chooseUnits, chosenUnits } from "./device-choices.js";
import { BOOK, borrow, borrowedKeys, emptyBorrowed, EXAMPLE, heldAnew, openExample, paintBorrowed, showButtons, SOURCES } from "./borrowed.js";
import { clear, openBrief, sayBriefly } from "./brief.js";
import { openKeep } from "./keep.js";
import { collect, fill, isBlank, openFilled, paintProblems, paintRemarks, showGhosts } from "./form.js";
import { element, openFiles, paintAnswer } from "./paint.js";
import { openPictures } from "./plot.js";
import { openRows } from "./rows.js";
import { openSuggestions } from "./suggest.js";
import { rememberChoices } from "./shelf/again.js";
import { fillFromTank, leadOn, refill, tankAnew } from "./shelf/fill-form.js";
import { markForm, tankKeys } from "./shelf/fill-marks.js";
import { isLedHere } from "./shelf/lead.js";
import { offerLog, offerLogOn } from "./shelf/log-answer.js";
import { day } from "./shelf/shelf-start.js";
import { onSwitch } from "./shelf/switch.js";

// Milliseconds. The tank fills the form before the first answer; where this device's store does not answer, nobody waits
// for it, and a tank that comes later fills the form then.
const SHELF_SOON = 3_000;
const PAUSE = 150; // ms after the last key before Python is asked
const MOST_ROWS = 300; // of a list in an address; more would freeze the page, and no keeper has made it

let page; // the calculator that is open: name, form, units of its fields, the form when empty, and last reply

export function open() {
  const place = document.querySelector("#calculator");
  const here = { name: place.dataset.calculator, place, form: place.querySelector("form"), units: "metric", asked: 0 };
  page = here;
  const early = collect(here.form); // may have been typed before this script came
  here.form.reset();
  fillInToday(here.form);
  here.empty = collect(here.form);
  fillFromAddress(here);
  const differs = ([key, value]) => value !== "" && JSON.stringify(value) !== JSON.stringify(here.empty[key]);
  fill(here.form, Object.fromEntries(Object.entries(early).filter(differs)));
  openFilled(here.form, here.empty);
  markDemo(here);
  here.form.addEventListener("input", () => soon(here));
  here.form.addEventListener("submit", (event) => event.preventDefault());
  openRows(here.form, () => soon(here));
  openSuggestions(here.form, () => soon(here));
  selectOnFocus(here.form);
  openBrief(here.form);
  openUnits(here, place.querySelector("#unit-choice"));
  openExample(here, (change, units = here.units) => {
    const shown = here.units; // the units that the keeper reads; what is filled in may be in others
    change();
    setUnits(here, units);
    soon(here, 0, shown);
  });
  openKeep(here);
  openTank(here);
  openFiles(place);
  openPictures();
  if (!isBlank(here)) waiting(here);
  showButtons(here, isBlank(here));
  showLoading(here, place.querySelector("#loading"));
}

/** The tank that the keeper stands at fills what is blank; an address that brings figures of its own wins. */
function openTank(here) {
  leadOn(here);
  rememberChoices(here);
  offerLogOn(here);
  const led = isLedHere();
  const keys = Object.keys(here.address ?? {});
  const held = borrowedKeys(here);
  const books = here.borrowed?.source === BOOK && keys.every((key) => held.includes(key)); // all of them
  const alone = history.state?.given || (keys.length && !led && !books);
  markForm(here);
  here.filling = alone ? Promise.resolve(false) : fillFromTank(here, () => books && emptyBorrowed(here)).then((any) => any && tankFilled(here));
  onSwitch(async () => {
    if (await refill(here)) tankFilled(here, 0);
    else offerLog(here);
  });
}

/** Figures of the tank are metric; what the keeper reads is changed with the next answer. */
function tankFilled(here, pause) {
  if (isGone(here)) return;
  const shown = here.units;
  setUnits(here, "metric");
  openFilled(here.form, here.empty);
  showButtons(here, isBlank(here));
  if (here.ready) soon(here, pause, shown);
  else waiting(here);
}

/** Only the day that is asked about: any other date is the keeper's own, and empty until they say it. */
function fillInToday(form) {
  const today = form.querySelector("#in-today");
  if (today) today.value ||= day();
}

/** The first tap into a field selects what stands there, so that what is typed takes its place. */
function selectOnFocus(form) {
  let fresh;
  form.addEventListener("focusin", ({ target }) => {
    fresh = target.matches("input[type=text]") ? target : null;
    fresh?.select();
  });
  form.addEventListener("click", ({ target }) => { // a tap puts the caret down after the focus
    if (target === fresh && target.selectionStart === target.selectionEnd) target.select();
    fresh = null;
  });
}

function fillFromAddress(here) {
  const state = history.state?.given; // all that was typed, even what cannot be used yet
  if (state) {
    fill(here.form, state);
    here.borrowed = history.state.borrowed;
    here.aside = history.state.aside;
    here.tank = history.state.tank;
    setUnits(here, history.state.units);
    return;
  }
  /** @type {Record<string, any>} */
  const asked = Object.fromEntries(new URLSearchParams(location.search));
  for (const field of here.form.querySelectorAll("[data-private]")) delete asked[field.dataset.key];
  const named = Object.keys(SOURCES).find((word) => asked[word]);
  const keys = named && asked[named].split(",");
  for (const word of Object.keys(SOURCES)) delete asked[word];
  here.address = { ...asked }; // as it came: Python names the words in it that it does not know
  for (const [key, text] of Object.entries(asked)) {
    if (Array.isArray(here.empty[key])) asked[key] = rowsFrom(text) ?? here.empty[key];
  }
  fill(here.form, asked);
  const tank = [...here.place.querySelectorAll(".tries a")].find((one) => one.getAttribute("href") === location.search);
  if (tank) borrow(here, `the demo tank ${tank.textContent}`);
  else if (keys) borrow(here, SOURCES[named], keys);
  setUnits(here, isBlank(here) ? chosenUnits() : "metric");
}

/** Say which demo tank the form holds; from the first change on it is none. */
function markDemo(here) {
  const keys = borrowedKeys(here);
  const all = Object.entries(collect(here.form)).every(([key, value]) => keys.includes(key) || JSON.stringify(value) === JSON.stringify(here.empty[key]));
  for (const said of here.place.querySelectorAll("[data-tank]")) {
    const link = here.place.querySelector(`.tries a[href="${CSS.escape(said.dataset.tank)}"]`);
    said.hidden = !(keys.length && all && here.borrowed.source === `the demo tank ${link.textContent}`);
    if (said.hidden) link.removeAttribute("aria-current");
    else link.setAttribute("aria-current", "true");
  }
}

function rowsFrom(text) {
  try {
    const rows = JSON.parse(text);
    return Array.isArray(rows) && rows.length <= MOST_ROWS ? rows : undefined;
  } catch {
    return undefined; // a link that was cut short
  }
}

function setUnits(here, units) {
  here.units = units;
  document.documentElement.dataset.units = units;
  showGhosts(here.form);
  for (const button of document.querySelectorAll("#unit-choice button")) {
    button.setAttribute("aria-pressed", String(button.dataset.units === units));
  }
}

async function showLoading(here, loading) {
  const bar = loading.querySelector("progress");
  const late = setTimeout(() => { loading.hidden = false; }, 100); // a running Python answers before that
  const watch = (percent, text) => {
    bar.value = percent;
    loading.querySelector("span").textContent = text;
  };
  try {
    await start(watch);
    clearTimeout(late);
    loading.hidden = true;
    await atMost(here.filling, SHELF_SOON);
    if (isGone(here)) return;
    here.ready = true;
    document.querySelector("#after").hidden = false;
    await answer(here, chosenUnits());
  } catch (wrong) {
    clearTimeout(late);
    loading.hidden = false;
    bar.hidden = true;
    const again = element("button", { type: "button", textContent: "Try again" });
    again.onclick = () => { bar.hidden = false; showInstead(here.place, false); showLoading(here, loading); };
    showInstead(here.place, true);
    loading.querySelector("span").replaceChildren(`Python could not start (${wrong.message}). Nothing was computed from your figures; they stay in the form. `, again);
  }
}

/** Where Python does not start, what stands in the page without it is pointed to and open. */
function showInstead(place, failed) {
  place.querySelector("#instead").hidden = !failed;
  if (failed) document.querySelector("#ready")?.setAttribute("open", "");
}

function soon(here, pause = PAUSE, units = here.units) {
  document.querySelector(".result").classList.add("old");
  markDemo(here);
  markForm(here);
  showButtons(here, isBlank(here));
  if (!here.ready && !isBlank(here)) waiting(here);
  remember(here, location.search);
  clearTimeout(here.timer);
  here.timer = setTimeout(() => here.ready && answer(here, units), pause);
}

/** Whether a tapped link has put another page in this one's place, be it a calculator or not. */
function isGone(here) {
  return here !== page || !here.place.isConnected;
}

/** Ask Python with what stands in the form; `units` changes the fields to another system on the way. */
async function answer(here, units = here.units) {
  if (isGone(here)) return; // the pause after the last key may outlast the page
  const number = ++here.asked;
  const blank = isBlank(here);
  const keys = borrowedKeys(here);
  const tanks = tankKeys(here);
  const borrowed = keys.length ? { keys, source: here.borrowed.source } : undefined;
  let reply;
  try {
    reply = await ask(questionOf({ calculator: here.name, given: blank ? {} : collect(here.form), own: !blank, borrowed, address: here.address, given_in: here.units, units }));
  } catch (wrong) {
    if (!isGone(here)) noAnswer(here, `Python failed on this: ${wrong.message}`);
    return;
  }
  if (number !== here.asked || isGone(here)) return;
  if (units !== here.units && !blank) {
    fill(here.form, reply.given);
    heldAnew(here, keys);
    tankAnew(here, tanks);
  }
  here.metric = reply.address;
  markForm(here);
  setUnits(here, units);
  paintProblems(here.form, reply.problems ?? {});
  paintRemarks(here.form, reply.remarks ?? {});
  sayLeftOut(here, reply);
  here.reply = !blank && reply.answer ? reply : null;
  if (blank) paintExample(reply);
  else if (reply.answer) paintOwn(here, reply);
  else paintMissing(here, reply);
  rememberAddress(here, blank ? {} : reply.address ?? {}, keys);
  here.form.dispatchEvent(new CustomEvent("answered", { detail: reply }));
  here.place.dataset.answered = String(number);
}

/** Once, above the form: the words of the address that this book does not know. */
function sayLeftOut(here, reply) {
  if (!here.address) return;
  here.address = undefined;
  const place = here.place.querySelector("#left-out");
  place.textContent = reply.left_out;
  place.hidden = !reply.left_out;
}

function paintExample(reply) {
  paintAnswer(reply.painted.html);
  showState("Worked example", "None of these figures are yours: fill in your own in the form.");
  paintBorrowed();
  sayBriefly({ level: "info", text: "" });
}

function paintOwn(here, reply) {
  const { borrowed, brief } = reply.painted;
  paintAnswer(reply.painted.html);
  paintBorrowed(borrowed);
  const example = borrowed?.all && [EXAMPLE, BOOK].includes(here.borrowed.source);
  showState(example ? "Worked example" : borrowed?.text ? "Result, partly of figures that are not yours" : "Result", "Result updated.");
  if (borrowed?.all && !example) document.querySelector("#result-title").textContent = "Result for a demo tank";
  sayBriefly(brief);
}

/** Something is wrong or still needed: no answer stands, and one line says what there is to do. */
function paintMissing(here, { problems = {}, needed }) {
  const count = Object.keys(problems).length;
  const wrong = count ? `Not computed: ${count === 1 ? "one field needs" : `${count} fields need`} another value.` : "";
  noAnswer(here, wrong, [wrong, needed?.text].filter(Boolean).join(" "), needed?.paths ?? []);
  sayBriefly({ level: count ? "caution" : "info", text: wrong || needed.text });
  if (count) clear(document.activeElement?.closest("[aria-invalid]"));
}

/** Take the answer away, so that an old one cannot pass for one to these figures. */
function noAnswer(here, status, line = "", paths = []) {
  here.reply = null;
  paintBorrowed();
  showState("No answer yet", status, line, paths);
}

function waiting(here) {
  noAnswer(here, "Your figures are in. The answer comes when Python has loaded.");
}

/** The heading and status of the result. With a line of what is missing, or no answer yet, none is shown. */
function showState(title, status, line = "", paths = []) {
  const still = document.querySelector("#still");
  document.querySelector("#result-title").textContent = title;
  document.querySelector("#status").textContent = status;
  document.querySelector("#answer").hidden = title === "No answer yet";
  document.querySelector(".result").classList.remove("old");
  still.textContent = line;
  still.dataset.paths = paths.join(" ");
  still.hidden = !line;
}

/** The address carries every figure that the answer used, and says which of them are an example's. */
function rememberAddress(here, address, keys) {
  const borrowed = keys.filter((key) => key.split(".")[0] in address || key in address);
  const word = Object.keys(SOURCES).find((one) => SOURCES[one] === here.borrowed?.source) ?? "from-example";
  const query = new URLSearchParams({ ...address, ...(borrowed.length && { [word]: borrowed.join() }) }).toString();
  remember(here, query ? `?${query}` : "");
}

/** The entry in the history carries all that was typed. */
function remember(here, search) {
  const state = { given: collect(here.form), units: here.units, borrowed: here.borrowed, aside: here.aside, tank: here.tank };
  writeEntry(here.place, location.pathname + search + location.hash, { state });
}

function openUnits(here, buttons) {
  if (!buttons) return;
  setUnits(here, here.units);
  buttons.onclick = ({ target }) => {
    const units = target.dataset.units;
    if (!units) return;
    chooseUnits(units);
    if (units !== here.units) answer(here, units);
  };
}
