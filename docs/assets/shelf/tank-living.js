// Plants and animals of a tank: a row each, with how much or how many, and a field that finds more by any name.

import { element } from "../paint.js";
import { withMoment } from "./dated-values.js";
import { finder, pictured } from "./log-which.js";
import { nameOf, openNames } from "./names.js";
import { numberOf } from "./number.js";
import { tap } from "./sheet.js";
import { storedWithin, tidy, unitOf, written } from "./units.js";
import { day } from "./shelf-start.js";

/**
 * The list as an element: the rows that live there `now`. `changed(key, rows)` hears of every change, with the tank's
 * own rows; of them only the one that was changed is written anew, and one that is out stands there with none, so that
 * the log of before does not bring it back.
 */
export function livingList(tank, one, changed, now) {
  const list = one.kind;
  const [named, amount] = one.fields.map((inner) => inner.key);
  const keys = { named, amount, row: one.fields.find((inner) => inner.key === amount) };
  const box = element("fieldset", { className: "rows living" }, element("legend", { textContent: one.label }));
  const rows = element("div", {});
  box.dataset.list = one.key;
  let held = [...(now ?? tank[one.key] ?? [])];
  let written = [...(tank[one.key] ?? [])];
  const put = (key, row) => {
    held = withRow(held, named, key, row);
    written = withRow(written, named, key, withMoment(row ?? { [named]: key, [amount]: 0 }));
    changed(one.key, written);
    paint();
  };
  const paint = (whole = false) => showRows(rows, held.map((row) => row[named]), whole, (at) => living(held[at], keys, list, (next) => put(held[at][named], next)));
  const add = (key) => {
    if (!held.some((row) => row[named] === key)) put(key, { [named]: key, [amount]: null, ...(list === "plants" ? { since: day() } : {}) });
  };
  openNames().then(() => paint(true));
  const find = finder(list, (key) => pictured(list, key, tap(nameOf(list, key), () => add(key))), `find-${list}`);
  box.append(rows, find);
  return box;
}

/**
 * A row for each key. Where the same kinds stand there already they stay, and with them the field that a tap is on its
 * way to, unless they are painted `whole`: other names, other units.
 */
export function showRows(box, kinds, whole, row) {
  const said = kinds.join(" ");
  if (!whole && box.dataset.kinds === said) return;
  box.dataset.kinds = said;
  box.replaceChildren(...kinds.map((_key, at) => row(at)));
}

/** The rows with another one of that key, or without it. */
function withRow(rows, named, key, row) {
  const at = rows.findIndex((one) => one[named] === key);
  if (at < 0) return row ? [...rows, row] : rows;
  return row ? rows.with(at, row) : rows.toSpliced(at, 1);
}

/** One kind: its name, its amount between Less and More, and the way out. `keys.row` is the amount's row of the table. */
export function living(row, keys, list, put) {
  const name = nameOf(list, row[keys.named]);
  const unit = unitOf(keys.row);
  const words = list === "plants" ? `${unit.unit} wet` : "animals";
  const field = element("input", { inputMode: "decimal", value: written(keys.row, unit, row[keys.amount]), placeholder: "not said", autocomplete: "off" });
  field.setAttribute("aria-label", `${name}, ${words}`);
  const write = (value) => {
    const amount = Number.isFinite(value) ? storedWithin(keys.row, unit, value) : null;
    field.value = written(keys.row, unit, amount);
    put({ ...row, [keys.amount]: amount });
  };
  field.onchange = () => write(numberOf(field.value));
  const move = (by) => write(tidy((numberOf(field.value) || 0) + by * unit.steps[0]));
  const less = tap("−", () => move(-1), { name: `Less: ${name}` });
  const more = tap("+", () => move(1), { name: `More: ${name}` });
  const out = element("button", { type: "button", textContent: "Remove" });
  out.setAttribute("aria-label", `Remove: ${name}`);
  out.onclick = () => put(null);
  return element("div", { className: "living-row" }, element("b", { textContent: name }), element("span", { className: "unit", textContent: words }), element("div", { className: "stepper" }, less, field, more), out);
}
