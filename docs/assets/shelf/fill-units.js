// A tank's figures, which are metric, in the units that a form shows: what stands there already keeps its meaning.

import { ask } from "../runtime.js";

/** Values by key for a form in these units; Python changes them, and what it cannot change is left out. */
export async function inFormUnits(calculator, values, units) {
  if (units === "metric" || !Object.keys(values).length) return values;
  const { given } = await ask({ calculator, given: asTyped(values), own: true, given_in: "metric", units });
  return Object.fromEntries(Object.entries(given ?? {}).filter(([key]) => key in values));
}

/** The same as a hand types it: every figure a text. */
function asTyped(value) {
  if (Array.isArray(value)) return value.map(asTyped);
  if (typeof value === "object" && value !== null) return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, asTyped(part)]));
  return String(value ?? "");
}
