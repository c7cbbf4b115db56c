// What a tank's fields and last readings fill into a calculator's form, by the table that the build made.

import { ask, isRunning } from "../runtime.js";
import { table } from "./opened.js";
import { at } from "./tank-fields.js";

const MOST_ENTRIES = 200; // of the log, the latest, that are looked at

/** Figures by input for a calculator, metric, and where each comes from in words; null where nothing fits. */
export async function filled(calculator, tank, entries) {
  const fills = (await table("fields")).fills?.[calculator];
  if (!fills) return null;
  const late = entries.slice(-MOST_ENTRIES);
  if (isRunning()) {
    const reply = await ask({ calculator, fill: { calculator, tank, entries: late } });
    if (reply.fields) return { values: reply.fields, from: reply.from ?? {}, paths: pathsOf(fills) };
  }
  const values = {};
  const from = {};
  for (const [input, rule] of Object.entries(fills)) {
    const value = valueOf(rule.from, tank, late);
    if (value === null) continue;
    values[input] = value;
    from[input] = rule.words ?? "";
  }
  return { values, from, paths: pathsOf(fills) };
}

function pathsOf(fills) {
  return Object.fromEntries(Object.entries(fills).map(([input, rule]) => [input, rule.from]));
}

/** A path of the tank, or the last reading of something. */
function valueOf(source, tank, entries) {
  const reading = /^(?:last )?reading[ .](\w+)$/.exec(source)?.[1];
  if (!reading) return at(tank, source);
  return entries.findLast((one) => one.kind === "reading" && one.what === reading)?.value ?? null;
}
