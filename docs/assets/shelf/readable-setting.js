// Settings may come from a file or from another version of the book: what a page could not read is as if it were not set.

import { isObject } from "./operations.js";
import { CALL, HANDFUL, KITS, ROUND, SPOON, TICKS } from "./settings.js";

const MOST_HANDFUL_G = 10_000;

/** What of a setting's value can be read, by name; settings that are not named here are read as they are. */
const READABLE = {
  [TICKS]: (value) => (isObject(value) && Array.isArray(value.done) ? value : null),
  [ROUND]: (value) => (isObject(value) && [value.today, value.order].every((rows) => Array.isArray(rows) && rows.every(isObject)) ? value : null),
  [KITS]: (value) => (isObject(value) ? Object.fromEntries(Object.entries(value).filter(([, kit]) => isKit(kit))) : null),
  [HANDFUL]: (value) => (isPositive(value) && value <= MOST_HANDFUL_G ? value : null),
  [SPOON]: (value) => (isPositive(value) ? value : null),
  [CALL]: (value) => (typeof value === "string" ? value : null),
};

/** The value, or as much of it as can be read; null where that is nothing. */
export function readable(name, value) {
  const read = Object.hasOwn(READABLE, name) ? READABLE[name] : null;
  return read && value !== null ? read(value) : value;
}

/** A kit's unit as the log keeps it: a figure of the log is (shown - zero) x factor. */
function isKit(kit) {
  return isObject(kit) && typeof kit.label === "string" && Number.isFinite(kit.zero) && isPositive(kit.factor) && isPositive(kit.step);
}

function isPositive(value) {
  return typeof value === "number" && Number.isFinite(value) && value > 0;
}
