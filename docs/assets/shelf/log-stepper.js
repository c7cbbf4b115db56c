// A number between Less and More, which move it by one step within its limits, and Save.

import { element } from "../paint.js";
import { numberOf } from "./number.js";
import { tap } from "./sheet.js";

/** `first` is what is offered; `typed`, where there is one, is what a hand gave before and stands in its place. */
export function stepper({ name, unit, limits, step, first, typed }, write) {
  const { low, high } = limits;
  const field = element("input", { id: "log-value", inputMode: "decimal", defaultValue: String(first), autocomplete: "off" });
  if (typed) field.value = typed;
  const problem = element("p", { className: "problem", id: "log-value-problem", hidden: true });
  problem.setAttribute("role", "alert");
  field.setAttribute("aria-describedby", "log-value-problem");
  const read = () => numberOf(field.value);
  const move = (by) => {
    const to = (Number.isFinite(read()) ? read() : 0) + by * step;
    field.value = String(Number(Math.min(high, Math.max(low, to)).toFixed(4)));
  };
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
  return element("section", { className: "taps-part" }, label, element("div", { className: "stepper" }, less, field, more, save), problem);
}
