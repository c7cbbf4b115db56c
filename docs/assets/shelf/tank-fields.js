// The fields of a tank as a form, made from fields.json; what is typed is read back and checked against its limits.

import { element } from "../paint.js";
import { numberOf } from "./number.js";
import { livingList } from "./tank-living.js";
import { at } from "./tank-paths.js";
import { storedWithin, unitOf, written } from "./units.js";

/** All single fields of the table, those of groups by their path. */
export function flat(fields, within = "") {
  return fields.flatMap((one) => (one.fields && one.kind === "group" ? flat(one.fields, `${within}${one.key}.`) : [{ ...one, path: within + one.key }]));
}

/** The fields of a tank as elements; `changed(path, value)` hears what holds, in the order of the table. */
export function fieldsOf(tank, fields, changed) {
  return fields.map((one) => {
    if (one.kind === "group") return group(tank, one, changed);
    if (one.kind === "plants" || one.kind === "animals") return livingList(tank, one, changed, tank.lives?.[one.key]);
    return field(tank, { ...one, path: one.path ?? one.key }, changed);
  });
}

function group(tank, one, changed) {
  const inside = one.fields.map((inner) => field(tank, { ...inner, path: `${one.key}.${inner.key}` }, changed));
  return element("fieldset", { className: "rows" }, element("legend", { textContent: one.label }), ...inside);
}

function field(tank, one, changed) {
  const id = `tank-${one.path.replaceAll(".", "-")}`;
  const value = at(tank, one.path);
  const unit = unitOf(one);
  const entry = one.kind === "choice" ? chooser(one, value) : element("input", { type: one.kind === "date" ? "date" : "text", value: written(one, unit, value), autocomplete: "off" });
  entry.id = id;
  if (one.kind === "number") entry.inputMode = "decimal";
  entry.setAttribute("aria-describedby", `${id}-hint ${id}-problem`);
  const problem = element("p", { className: "problem", id: `${id}-problem`, hidden: true });
  entry.onchange = () => {
    const { value: given, wrong } = read(one, unit, entry.value);
    problem.textContent = wrong;
    problem.hidden = !wrong;
    if (wrong) entry.setAttribute("aria-invalid", "true");
    else entry.removeAttribute("aria-invalid");
    if (!wrong) changed(one.path, given);
  };
  const unitAfter = unit.unit ? [element("span", { className: "unit", textContent: unit.unit })] : [];
  const hint = element("p", { className: "hint", id: `${id}-hint`, textContent: one.help ?? "" });
  const made = element("div", { className: "field" }, element("label", { htmlFor: id, textContent: one.label }), element("div", { className: "entry" }, entry, ...unitAfter), hint, problem);
  made.dataset.path = one.path;
  return made;
}

function chooser(one, value) {
  const choices = one.choices.map(({ key, label }) => new Option(label, key));
  const made = element("select", {}, new Option("not said", ""), ...choices);
  made.value = value ?? "";
  return made;
}

/** What was typed, as the tank holds it: null for nothing; or what is wrong with it. */
function read(one, unit, text) {
  const typed = text.trim();
  if (!typed) return { value: null, wrong: "" };
  if (one.kind !== "number") return { value: typed, wrong: "" };
  const value = numberOf(typed);
  if (!Number.isFinite(value)) return { value: null, wrong: `${one.label} must be a number.` };
  const low = unit.low ?? -Infinity;
  const high = unit.high ?? Infinity;
  if (value < low || value > high) return { value: null, wrong: `${one.label} must be ${low} to ${high} ${unit.unit}`.trim().concat(".") };
  return { value: storedWithin(one, unit, value), wrong: "" };
}
