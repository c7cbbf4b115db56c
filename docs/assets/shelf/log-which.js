// Which plant, animal or salt it was, and whether it came in, went out or went to another tank.

import { element } from "../paint.js";
import { called } from "./opened.js";
import { askValue } from "./log-value.js";
import { allNames, nameOf, namesOf, openNames } from "./names.js";
import { tap, taps } from "./sheet.js";

const MOST_FOUND = 8;

/** Ask which one; those of this tank stand first, any other is found by its name. */
export async function askWhich(here) {
  const { kind, tank } = here;
  const list = namesOf(kind);
  if (list) await openNames();
  here.name.textContent = `${kind.label}: ${called(tank)}`;
  const choose = (what) => (kind.kind === "plant" || kind.kind === "animal" ? askWay(here, what) : askValue(Object.assign(here, { what })));
  if (here.edit) return choose({ ...(kind.whats?.[0] ?? {}), what: here.edit.what, label: list ? nameOf(list, here.edit.what) : here.edit.what });
  const inTank = list === "plants" ? (tank.plants ?? []).map((one) => one.plant) : list === "animals" ? (tank.animals ?? []).map((one) => one.animal) : [];
  const button = (key) => tap(nameOf(list, key), () => choose({ ...(kind.whats?.[0] ?? {}), what: key, label: nameOf(list, key) }));
  const parts = [];
  if (!list) parts.push(taps("Which", (kind.whats ?? []).map((what) => tap(what.label, () => choose(what)))));
  if (inTank.length) parts.push(taps("In this tank", inTank.map(button)));
  if (list) parts.push(finder(list, button));
  here.body.replaceChildren(...parts);
  return undefined;
}

/** A field that finds names; what it finds stands below it as large buttons. */
export function finder(list, button) {
  const field = element("input", { id: "log-find", type: "search", autocomplete: "off", spellcheck: false });
  const hits = element("div", { className: "taps" });
  field.oninput = () => {
    const typed = field.value.trim().toLowerCase();
    const found = typed.length < 2 ? [] : allNames(list).filter((one) => one.words.includes(typed)).slice(0, MOST_FOUND);
    hits.replaceChildren(...found.map((one) => button(one.key)));
  };
  const label = element("label", { htmlFor: "log-find", textContent: list === "plants" ? "Another plant, by any name" : "Another animal, by any name" });
  return element("section", { className: "taps-part" }, label, field, hits);
}

/** In, out, or to another tank; then how much. */
async function askWay(here, what) {
  const others = (await here.store.tanks()).filter((one) => one.id !== here.tank.id);
  Object.assign(here, { what });
  const out = here.edit?.value < 0;
  const ways = [
    ["Put in", () => askValue(here, { heading: `${what.label} in` })],
    ["Taken out", () => askValue(here, { sign: -1, heading: `${what.label} out` })],
  ];
  if (here.edit) return ways[out ? 1 : 0][1]();
  const move = (other) => askValue(here, {
    sign: -1, heading: `${what.label} to ${other.name}`,
    more: (value) => ({ text: `to ${other.name}`, more: [{ tank: other.id, kind: here.kind.kind, what: what.what, value, text: `from ${here.tank.name}` }] }),
  });
  const back = here.body.querySelector(".sheet-back");
  const parts = [taps(what.label, ways.map(([words, act]) => tap(words, act)))];
  if (others.length) parts.push(taps("Into another tank", others.map((other) => tap(called(other), () => move(other)))));
  here.body.replaceChildren(...(back ? [back] : []), ...parts);
  here.name.focus();
  return undefined;
}

