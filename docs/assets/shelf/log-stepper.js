// A number between Less and More, which move it by one step within its limits, and Save.

import { element } from "../paint.js";
import { numberOf } from "./number.js";
import { tap } from "./sheet.js";

/**
 * `first` is what the keeper gave last, and stands in the field; where there is none it is empty, and a step begins at
 * `usual`, which nobody has read. `typed`, where there is one, is what a hand gave before and stands in its place: at `time`
 * of day, where the sheet was closed since. `write` saves a value, `note` hears what a hand has given that is not saved.
 */
export function stepper({ name, unit, limits, step, first, usual, typed, time }, write, note) {
  const { low, high } = limits;
  const field = element("input", { id: "log-value", inputMode: "decimal", defaultValue: String(first ?? ""), autocomplete: "off" });
  if (typed) field.value = typed;
  const problem = element("p", { className: "problem", id: "log-value-problem", hidden: true });
  problem.setAttribute("role", "alert");
  field.setAttribute("aria-describedby", "log-value-problem");
  const read = () => numberOf(field.value);
  const move = (by) => {
    const to = Number.isFinite(read()) ? read() + by * step : (first ?? usual); // the first tap on an empty field only fills it
    field.value = String(Number(Math.min(high, Math.max(low, to)).toFixed(4)));
    note(typedIn(field));
  };
  field.oninput = () => note(typedIn(field));
  const save = tap("Save", () => {
    const value = read();
    const span = Number.isFinite(high) ? `${low} to ${high} ${unit}`.trim() : `${low} or more`;
    const wrong = !Number.isFinite(value) ? "Give a number." : value < low || value > high ? `${name} must be ${span}.` : "";
    problem.textContent = wrong;
    problem.hidden = !wrong;
    if (!wrong) write(value);
  });
  save.classList.add("main");
  const less = tap("−", () => move(-1), { name: `Less: ${name}` });
  const more = tap("+", () => move(1), { name: `More: ${name}` });
  const label = element("label", { htmlFor: "log-value", textContent: `Another value${unit ? `, ${unit}` : ""}` });
  return element("section", { className: "taps-part" }, label, element("div", { className: "stepper" }, less, field, more, save), problem, time ? notSaved(field, time, note) : "");
}

/** What a hand has given in the field, as it stands; empty where nobody has. */
export function typedIn(field) {
  return field.value === field.defaultValue ? "" : field.value;
}

/** Says that the figure was typed before and is in no log; a tap takes it out of the field. */
function notSaved(field, time, note) {
  const line = element("p", { className: "hint not-saved" }, `Typed at ${time}, not logged yet. `);
  line.append(tap("Leave it out", () => {
    field.value = field.defaultValue;
    note("");
    line.remove();
    field.focus();
  }));
  return line;
}
