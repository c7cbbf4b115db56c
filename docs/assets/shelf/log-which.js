// Which plant, animal or salt it was, and whether it came in, went out or went to another tank.

import { element, thumb } from "../paint.js";
import { called } from "./shelf-start.js";
import { askValue } from "./log-value.js";
import { allNames, listOf, nameOf, neverOf } from "./names.js";
import { RECORD_OF } from "./occupants.js";
import { tap, taps } from "./sheet.js";
import { upper } from "./words.js";

const MOST_FOUND = 8;

/** Ask which one; those of this tank stand first, any other is found by its name. */
export function askWhich(here) {
  const { kind, tank } = here;
  const list = listOf(kind);
  here.name.textContent = `${upper(kind.label)}: ${called(tank)}`;
  if (!list) return here.show(taps("Which", kind.whats.map((what) => tap(what.label, () => askValue(Object.assign(here, { what }))))));
  const named = (key) => ({ ...kind.whats[0], what: key, label: nameOf(list, key) });
  if (here.edit) return askWay(here, named(here.edit.what));
  const button = (key) => pictured(list, key, tap(nameOf(list, key), () => askWay(here, named(key))));
  const held = here.lives[list].map((row) => button(row[RECORD_OF[list]]));
  return here.show(held.length ? taps("In this tank", held) : "", finder(list, button, "log-find"));
}

/** A plant's button with its small picture; an animal's as it is. */
export function pictured(list, key, button) {
  if (list === "plants") button.prepend(thumb(new URL(document.body.dataset.root, location.href), key));
  return button;
}

/** A field that finds names; what it finds stands below it as large buttons. */
export function finder(list, button, id) {
  const field = element("input", { id, type: "search", autocomplete: "off", spellcheck: false });
  const hits = element("div", { className: "taps names" });
  field.oninput = () => {
    const typed = field.value.trim().toLowerCase();
    const found = typed.length < 2 ? [] : allNames(list).filter((one) => one.words.includes(typed)).slice(0, MOST_FOUND);
    hits.replaceChildren(...found.map((one) => (neverOf(list, one.key) ? warned(one) : button(one.key))));
  };
  const label = element("label", { htmlFor: id, textContent: list === "plants" ? "Another plant, by any name" : "Another animal, by any name" });
  return element("section", { className: "taps-part" }, label, field, hits);
}

/** A plant that nobody is offered: its page and the warning, in place of the button that would put it in. */
function warned({ key, name }) {
  const href = new URL(`plants/${key}/`, new URL(document.body.dataset.root, location.href)).href;
  return element("a", { className: "button", href }, `${name}: `, element("em", { className: "law-mark", textContent: neverOf("plants", key) }));
}

/** In, out, or to another tank; then how much. */
async function askWay(here, what) {
  const others = (await here.store.tanks()).filter((one) => one.id !== here.tank.id);
  Object.assign(here, { what });
  /** @type {[string, () => Promise<void>][]} */
  const ways = [
    ["Put in", () => askValue(here, { heading: `${what.label} in` })],
    ["Taken out", () => askValue(here, { sign: -1, heading: `${what.label} out` })],
  ];
  if (here.edit) return ways[here.edit.value < 0 ? 1 : 0][1]();
  const move = (other) => askValue(here, {
    sign: -1, heading: `${what.label} to ${other.name}`,
    more: (value) => ({ text: `to ${other.name}`, more: [{ tank: other.id, kind: here.kind.kind, what: what.what, value, text: `from ${here.tank.name}` }] }),
  });
  const parts = [taps(what.label, ways.map(([words, act]) => tap(words, act)))];
  if (others.length) parts.push(taps("Into another tank", others.map((other) => tap(called(other), () => move(other)))));
  here.show(...parts);
  return here.name.focus();
}
