// Plants and animals of a tank: a row each, with how much or how many, and a field that finds more by any name.

import { element } from "../paint.js";
import { finder } from "./log-which.js";
import { nameOf, openNames } from "./names.js";
import { numberOf } from "./number.js";
import { tap } from "./sheet.js";
import { day } from "./opened.js";

const STEPS = { plants: 10, animals: 1 };

/** The list as an element; `changed(key, rows)` hears of every change. */
export function livingList(tank, one, changed) {
  const list = one.kind;
  const [named, amount] = one.fields.map((inner) => inner.key);
  const keys = { named, amount };
  const box = element("fieldset", { className: "rows living" }, element("legend", { textContent: one.label }));
  const rows = element("div", {});
  let held = [...(tank[one.key] ?? [])];
  const put = (next) => {
    held = next;
    changed(one.key, held);
    paint();
  };
  const paint = () => rows.replaceChildren(...held.map((row, number) => living(row, keys, list, (next) => put(next ? held.with(number, next) : held.toSpliced(number, 1)))));
  const add = (key) => {
    if (!held.some((row) => row[keys.named] === key)) put([...held, { [keys.named]: key, [keys.amount]: null, ...(list === "plants" ? { since: day() } : {}) }]);
  };
  openNames().then(paint);
  const find = finder(list, (key) => tap(nameOf(list, key), () => add(key)), `find-${list}`);
  box.append(rows, find);
  return box;
}

/** One kind: its name, its amount between Less and More, and the way out. */
export function living(row, keys, list, put) {
  const name = nameOf(list, row[keys.named]);
  const unit = list === "plants" ? "g wet" : "animals";
  const field = element("input", { inputMode: "decimal", value: row[keys.amount] ?? "", placeholder: "not said", autocomplete: "off" });
  field.setAttribute("aria-label", `${name}, ${unit}`);
  const write = (value) => put({ ...row, [keys.amount]: Number.isFinite(value) ? Math.max(0, value) : null });
  field.onchange = () => write(numberOf(field.value));
  const move = (by) => write((numberOf(field.value) || 0) + by * STEPS[list]);
  const less = tap("−", () => move(-1), { name: `Less: ${name}` });
  const more = tap("+", () => move(1), { name: `More: ${name}` });
  const out = element("button", { type: "button", textContent: "Remove" });
  out.setAttribute("aria-label", `Remove: ${name}`);
  out.onclick = () => put(null);
  return element("div", { className: "living-row" }, element("b", { textContent: name }), element("span", { className: "unit", textContent: unit }), element("div", { className: "stepper" }, less, field, more), out);
}
