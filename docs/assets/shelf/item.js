// One tank, entry or kept calculation: made from its operations, and whether it can be shown.

import { isObject, timeOf } from "./operations.js";

const LONGEST_TEXT = 10_000;
const LONGEST_NAME = 80;
const LONGEST_ID = 80;
const MOST_PARTS = 1000; // of one list or object
const DEEPEST = 8;
// Control characters but tab and line breaks, and those that turn the direction of a line; halves of characters.
const UNFIT = /(?![\t\n\r])[\p{Cc}\p{Cs}\u202a-\u202e\u2066-\u2069]/u;
const HOSTILE = ["__proto__", "constructor", "prototype"];

/** What is wrong with the whole item, naming the field; "" where it can be shown. */
export function faultOf(of, item) {
  const fault = plainFault(item);
  if (fault) return fault;
  if (!isId(item.id)) return `id: text of 1 to ${LONGEST_ID} letters is needed`;
  if (of === "tank") return tankFault(item);
  return of === "entry" ? entryFault(item) : keptFault(item);
}

function tankFault({ name }) {
  if (typeof name !== "string" || !name.trim()) return "name: a tank needs a name";
  return name.length > LONGEST_NAME ? `name: longer than ${LONGEST_NAME} letters` : "";
}

function entryFault({ tank, kind, at, value, what, text }) {
  if (!isId(tank)) return "tank: an entry needs its tank";
  if (typeof kind !== "string" || !kind) return "kind: an entry needs its kind";
  if (Number.isNaN(timeOf(at)) || !at.includes("T")) return "at: an entry needs its date and time";
  if (value !== undefined && value !== null && typeof value !== "number") return "value: a number is needed";
  if (![what, text].every((one) => one === undefined || one === null || typeof one === "string")) return "what and text: only words can stand here";
  return "";
}

function keptFault(one) {
  const texts = ["tank", "calculator", "title", "address", "when"];
  const good = texts.every((name) => typeof one[name] === "string") && Array.isArray(one.lines)
    && one.lines.every((line) => typeof line === "string") && /^[a-z-]*$/.test(one.calculator)
    && (one.page === undefined || /^[a-z-]+\/$/.test(one.page)) && !Number.isNaN(timeOf(one.when));
  return good ? "" : "a kept calculation lacks a part";
}

export function isId(id) {
  return typeof id === "string" && id !== "" && id.length <= LONGEST_ID && !HOSTILE.includes(id);
}

/** What cannot be plain data of ours, with its place: too deep, too long, not finite, a hostile key. */
export function plainFault(value, place = "", depth = 0) {
  const here = place || "the value";
  if (depth > DEEPEST) return `${here}: nested too deep`;
  if (typeof value === "string") return textFault(value, here);
  if (typeof value === "number") return Number.isFinite(value) ? "" : `${here}: not a number`;
  if (value === null || typeof value === "boolean" || value === undefined) return "";
  if (!Array.isArray(value) && !isObject(value)) return `${here}: not plain data`;
  const parts = Object.entries(value);
  if (parts.length > MOST_PARTS) return `${here}: more than ${MOST_PARTS} parts`;
  for (const [key, part] of parts) {
    if (!Array.isArray(value) && HOSTILE.includes(key)) return `${here}: the key ${key} cannot be taken in`;
    const fault = plainFault(part, place ? `${place}.${key}` : key, depth + 1);
    if (fault) return fault;
  }
  return "";
}

function textFault(text, here) {
  if (text.length > LONGEST_TEXT) return `${here}: longer than ${LONGEST_TEXT} letters`;
  return UNFIT.test(text) ? `${here}: a control character cannot be taken in` : "";
}

/** Whether two plain values say the same; nothing and null are the same. */
export function isSame(one, other) {
  return canonical(one ?? null) === canonical(other ?? null);
}

function canonical(value) {
  return JSON.stringify(value, (_key, part) => (isObject(part) ? Object.fromEntries(Object.entries(part).sort(([a], [b]) => (a < b ? -1 : 1))) : part));
}
