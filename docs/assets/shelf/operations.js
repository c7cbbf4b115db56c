// The log: operations that are only ever added. What the shelf shows is derived from them (view.js).

/**
 * @typedef {object} Operation
 * @property {string} id
 * @property {string} at when it was done, UTC
 * @property {"tank" | "entry" | "kept" | "order" | "drop" | "undo"} op
 * @property {number} [place] its place among the operations of the same tap
 * @property {string} action the operations of one tap share it, and are undone together
 * @property {string} [key] the id of the tank, entry or calculation
 * @property {"tank" | "entry" | "kept"} [of] what is dropped
 * @property {Record<string, any>} [values] keys that are set; others stay as they are
 * @property {boolean} [whole] the values are all there is, and bring back what was dropped
 */

export const OPERATION_VERSION = 1;
/** The action of what older versions of the book kept: no tap, so that no undo takes it back. */
export const MOVED = "moved";
const KINDS = ["tank", "entry", "kept", "order", "drop", "undo"];
const LATEST = Date.parse("2200-01-01");

/** An id that nothing else has; a host without https offers no randomUUID. */
export function newId() {
  return crypto.randomUUID?.() ?? Array.from(crypto.getRandomValues(new Uint8Array(16)), (octet) => octet.toString(16).padStart(2, "0")).join("");
}

/** Operations of one tap, stamped later than `after` (ms), be the device's clock right or not. */
export function stamped(parts, after) {
  const at = new Date(Math.max(Date.now(), after + 1)).toISOString();
  const action = newId();
  return parts.map((part, place) => ({ id: newId(), at, place, action, v: OPERATION_VERSION, ...part }));
}

/** "good", "newer" (a later version of the book wrote it) or "broken". */
export function stateOf(one) {
  if (!isObject(one) || typeof one.id !== "string") return "broken";
  if (Number.isFinite(one.v) && one.v > OPERATION_VERSION) return "newer";
  if (typeof one.op !== "string" || typeof one.action !== "string" || !(timeOf(one.at) < LATEST)) return "broken";
  if (one.place !== undefined && !Number.isInteger(one.place)) return "broken";
  if (!KINDS.includes(one.op)) return "newer";
  return hasItsParts(one) ? "good" : "broken";
}

function hasItsParts({ op, key, of, values, undoes }) {
  if (op === "undo") return typeof undoes === "string";
  if (op === "order") return Array.isArray(values?.ids) && values.ids.every((id) => typeof id === "string");
  if (typeof key !== "string" || !key) return false;
  return op === "drop" ? ["tank", "entry", "kept"].includes(of) : isObject(values);
}

export function isObject(one) {
  return typeof one === "object" && one !== null && !Array.isArray(one);
}

const ISO_8601 = /^\d{4}-\d{2}-\d{2}(T\d{2}:\d{2}(:\d{2}(\.\d+)?)?(Z|[+-]\d{2}:\d{2})?)?$/;

/** The time of a date-time (ISO 8601) in ms; NaN for anything else, of which a browser may read much as a time. */
export function timeOf(text) {
  return typeof text === "string" && ISO_8601.test(text) ? Date.parse(text) : Number.NaN;
}

export function inOrder(one, other) {
  return timeOf(one.at) - timeOf(other.at) || (one.place ?? 0) - (other.place ?? 0) || (one.id < other.id ? -1 : 1);
}
