// Figures in the form that are not the keeper's: the worked example's, those of a page of the book, or a demo tank's.
// Which they are is remembered until they are changed, so that Python can say so in the answer. A change takes a figure
// out of them for good.

import { collect, fill } from "./form.js";

export const EXAMPLE = "the worked example";
export const BOOK = "this book";

// In an address: the keys whose figures are not the keeper's, by whose they are. The build's links name the book's.
export const SOURCES = { "from-example": EXAMPLE, "from-book": BOOK };

const text = (value) => JSON.stringify(value);

/** From now on all that stands in the form, or these keys of it, comes from a source in words. */
export function borrow(here, source, keys = Object.keys(here.empty)) {
  const now = collect(here.form);
  const held = keys.filter((key) => key in now && text(now[key]) !== text(here.empty[key]));
  here.borrowed = { source, held: Object.fromEntries(held.map((key) => [key, text(now[key])])) };
}

/** The keys whose figures are still as they were borrowed. */
export function borrowedKeys(here) {
  const now = collect(here.form);
  for (const [key, held] of Object.entries(here.borrowed?.held ?? {})) {
    if (text(now[key]) !== held) delete here.borrowed.held[key];
  }
  return Object.keys(here.borrowed?.held ?? {});
}

/** The same figures stand in the form in other units. */
export function heldAnew(here, keys) {
  if (here.borrowed) borrow(here, here.borrowed.source, keys);
}

export function emptyBorrowed(here) {
  fill(here.form, Object.fromEntries(borrowedKeys(here).map((key) => [key, here.empty[key]])));
  here.borrowed = null;
}

/** Say in the answer which figures are borrowed. */
export function paintBorrowed(borrowed) {
  const place = document.querySelector("#borrowed");
  place.hidden = !borrowed?.text;
  place.querySelector("p").textContent = borrowed?.text ?? "";
}

/** The buttons that show the whole example, give a keeper's own figures back, and empty the form. */
export function openExample(here, again) {
  const find = (id) => document.querySelector(id);
  find("#not-mine").onclick = () => again(() => emptyBorrowed(here));
  const example = find("#example"); // none where the example is a picture
  if (example) example.onclick = () => {
    const own = { given: collect(here.form), units: here.units, borrowed: here.borrowed };
    if (text(own.given) !== text(here.empty) && !here.borrowed) here.aside = own;
    again(() => {
      fill(here.form, { ...here.empty, ...JSON.parse(here.form.dataset.example) });
      borrow(here, EXAMPLE);
    }, "metric");
  };
  find("#mine").onclick = () => {
    const { given, units, borrowed } = here.aside;
    here.aside = null;
    again(() => {
      fill(here.form, given);
      here.borrowed = borrowed;
    }, units);
  };
  find("#empty").onclick = () => again(() => {
    fill(here.form, here.empty);
    here.borrowed = null;
  });
}

/** Which of these buttons there are. */
export function showButtons(here, blank) {
  document.querySelector("#mine").hidden = !here.aside;
  /** @type {HTMLButtonElement} */ (document.querySelector("#empty")).disabled = blank; // it keeps its place: nothing may move under the thumb
}
