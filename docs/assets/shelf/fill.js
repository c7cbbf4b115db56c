// What a tank's fields and last readings fill into a calculator's form: at once by the table that the build made, and
// once Python runs also what needs its age, its list or its last reading.

import { ask } from "../runtime.js";
import { day, table } from "./shelf-start.js";
import { at } from "./tank-paths.js";

const OF_TANK = "tank.";

/**
 * Figures by input for a calculator, metric, each with its origin in words; null where no tank fills it. `again` are
 * those that were chosen there for this tank the last time.
 */
export async function filled(calculator, tank, entries, again = {}) {
  const fields = await table("fields");
  if (!fields.fills[calculator]) return null;
  const reply = await ask({ message: "fill", calculator, tank, entries, today: day(), again });
  if (reply.complaints) throw new Error(reply.complaints.map(({ field, why }) => `${field}: ${why}`).join(" "));
  return { values: reply.fields, from: reply.from, paths: pathsOf(fields, calculator) };
}

/** The tank's own fields alone, for a form that is shown before Python has started. */
export async function filledAtOnce(calculator, tank) {
  const fields = await table("fields");
  if (!fields.fills[calculator]) return null;
  const own = Object.entries(fields.fills[calculator]).map(([input, rule]) => [input, firstOf(rule.from, tank)]);
  return { values: Object.fromEntries(own.filter(([, value]) => value !== null)), from: {}, paths: pathsOf(fields, calculator) };
}

/** Only where the tank's field comes first: a reading, if there is a fresh one, is Python's to take. */
function firstOf([source], tank) {
  return source.startsWith(OF_TANK) ? at(tank, source.slice(OF_TANK.length)) : null;
}

/** The tank's field to which an input may be saved. */
function pathsOf(fields, calculator) {
  const durable = fields.durable[calculator] ?? {};
  return Object.fromEntries(Object.entries(durable).map(([input, path]) => [input, path.replace(OF_TANK, "")]));
}
