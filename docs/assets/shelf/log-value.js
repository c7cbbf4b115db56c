// The value of an entry: the last five, the kit's own steps, or a number between two large buttons. No keyboard is needed.

import { element } from "../paint.js";
import { called } from "./opened.js";
import { tap, taps } from "./sheet.js";
import { kitPart } from "./log-kit.js";
import { handfulPart } from "./log-handful.js";

const MOST_STEPS = 12;

/** Ask for the value of `here.what`, or of the kind itself; `more(value)` makes further parts of the entry. */
export async function askValue(here, { more = () => ({}), sign = 1, heading = "" } = {}) {
  const { kind, tank, store } = here;
  const what = here.what ?? kind.whats?.[0] ?? {};
  const unit = what.unit ? ` ${what.unit}` : "";
  const name = heading || (kind.whats?.length > 1 || kind.kind === "reading" ? what.label : kind.label);
  here.name.textContent = `${name}: ${called(tank)}`;
  const write = (value, text) => here.save({
    what: what.what ?? null, value: sign * value, ...(text ? { text } : {}),
    words: `${name} ${text || `${value}${unit}`}`, ...more(value),
  });
  const kit = await store.setting("kits");
  const steps = kit?.[what.what]?.steps ?? what.steps ?? [];
  const last = (await store.lastValues(tank.id, kind.kind, what.what ?? null)).map(Math.abs);
  const value = (one) => tap(String(one), () => write(one), { name: `${name} ${one}${unit}` });
  const fresh = steps.filter((one) => !last.includes(one)).slice(0, MOST_STEPS);
  const parts = [];
  if (last.length) parts.push(taps(`The last ones${unit ? `,${unit}` : ""}`, [...new Set(last)].map(value)));
  if (fresh.length) parts.push(taps(last.length ? "Other steps" : `In${unit || " steps"}`, fresh.map(value)));
  const before = here.edit ? Math.abs(here.edit.value ?? 0) : (last[0] ?? what.last_default ?? steps[0] ?? 0);
  parts.push(stepper(name, what, before, steps, write));
  if (what.grams || what.unit === "g") parts.push(...(await handfulPart(here, write)));
  if (kind.kind === "reading") parts.push(kitPart(here, what));
  const back = here.body.querySelector(".sheet-back");
  here.body.replaceChildren(...(back ? [back] : []), ...parts, here.when.box);
}

/** A number between Less and More, which move it by the kit's step within its limits. */
function stepper(name, what, first, steps, write) {
  const step = smallest(steps);
  const field = element("input", { id: "log-value", inputMode: "decimal", value: String(first), autocomplete: "off" });
  const problem = element("p", { className: "problem", hidden: true });
  problem.setAttribute("role", "alert");
  const read = () => (field.value.trim() ? Number(field.value.trim().replace(",", ".")) : Number.NaN);
  const move = (by) => {
    const to = (Number.isFinite(read()) ? read() : 0) + by * step;
    field.value = String(Number(Math.min(what.high ?? Infinity, Math.max(what.low ?? 0, to)).toFixed(6)));
  };
  const less = tap("−", () => move(-1), { name: `Less: ${name}` });
  const more = tap("+", () => move(1), { name: `More: ${name}` });
  const save = tap("Save", () => {
    const value = read();
    const wrong = !Number.isFinite(value) ? "Give a number." : value < (what.low ?? -Infinity) || value > (what.high ?? Infinity) ? `${name} must be ${what.low} to ${what.high}.` : "";
    problem.textContent = wrong;
    problem.hidden = !wrong;
    if (!wrong) write(value);
  });
  save.classList.add("main");
  const row = element("div", { className: "stepper" }, less, field, more, save);
  const label = element("label", { htmlFor: "log-value", textContent: `Another value${what.unit ? `, ${what.unit}` : ""}` });
  return element("section", { className: "taps-part" }, label, row, problem);
}

function smallest(steps) {
  const gaps = steps.slice(1).map((one, at) => one - steps[at]).filter((gap) => gap > 0);
  return gaps.length ? Math.min(...gaps) : 1;
}
