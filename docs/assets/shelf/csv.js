// Readings as a table of text, one row a reading, quoted as RFC 4180 has it; and such a table read back.

import { digest } from "./digest.js";
import { timeOf } from "./operations.js";
import { fileWith } from "./file-guard.js";
import { ShelfError } from "./shelf-error.js";
import { separated, table } from "./table.js";
import { dateTimeOf } from "./when.js";

const COLUMNS = ["tank", "at", "what", "value", "text", "id"];
const NEEDED = ["tank", "at", "what", "value"];
const FAULTS_TOLD = 8;
const NUMBER = /^[+-]?\d+(\.\d+)?(e[+-]?\d+)?$/i;

/** All readings of the shelf, oldest first. */
export async function csvOf(shelf) {
  const names = new Map((await shelf.tanks()).map((tank) => [tank.id, tank.name]));
  const readings = await shelf.entries({ kind: "reading" });
  return table([COLUMNS, ...readings.map((one) => [names.get(one.tank), one.at, one.what, one.value, one.text, one.id])]);
}

/**
 * A file object from such a table. A name that no tank has makes a new tank. Throws `ShelfError` with every bad row.
 * @param {string} text
 * @param {{id: string, name: string}[]} tanks
 */
export function fileFromCsv(text, tanks) {
  const { rows, separator } = separated(text);
  const head = (rows.shift() ?? []).map((cell) => cell.trim().toLowerCase());
  const lacking = NEEDED.filter((name) => !head.includes(name));
  if (lacking.length) throw new ShelfError("broken", `This is neither a file of the shelf nor a table of readings: the first row lacks ${lacking.join(", ")}. Nothing was changed.`);
  const file = fileWith({ tanks: [], entries: [] });
  const faults = [];
  for (const [index, cells] of rows.entries()) {
    const row = /** @type {any} */ (Object.fromEntries(COLUMNS.map((name) => [name, textOf(name, cells[head.indexOf(name)])])));
    const fault = cells.length > head.length ? "more cells than the first row" : takeRow(row, separator, file, tanks);
    if (fault) faults.push(`row ${index + 2}: ${fault}`);
  }
  const more = faults.length - FAULTS_TOLD;
  if (faults.length) throw new ShelfError("broken", `Nothing was changed. ${faults.slice(0, FAULTS_TOLD).join("; ")}${more > 0 ? `; and ${more} more` : ""}.`);
  return { ...file, entries: numbered(file.entries) };
}

function textOf(name, cell = "") {
  return name === "text" ? cell : cell.trim();
}

/** Add a row's reading, and its tank where that is new; returns what is wrong with it. */
function takeRow({ tank, at, what, value, text, id }, separator, file, tanks) {
  if (!tank) return "tank: a name is needed";
  if (!/^[a-z0-9_]+$/.test(what)) return `what: ${JSON.stringify(what)} is no quantity of the log`;
  const number = separator === "," ? value : value.replace(",", "."); // a decimal comma, where commas do not separate
  if (!NUMBER.test(number) || !Number.isFinite(Number(number))) return `value: ${JSON.stringify(value)} is no number`;
  const when = dateTimeOf(at);
  if (!when) return `at: ${JSON.stringify(at)} is no date such as 2026-11-28 or 2026-11-28T18:30`;
  const entry = { id, tank: tankOf(tank, file, tanks).id, at: when, kind: "reading", what, value: Number(number) };
  file.entries.push(text ? { ...entry, text } : entry);
  return "";
}

function tankOf(name, file, tanks) {
  const isNamed = (one) => one.name.trim().toLowerCase() === name.toLowerCase();
  const there = file.tanks.find(isNamed);
  if (there) return there;
  const known = tanks.find(isNamed);
  const row = known ? { id: known.id, name: known.name } : { id: `table ${digest(name)}`, name }; // what the row lacks stays as it is
  file.tanks.push(row);
  return row;
}

/** A reading without an id gets one from what it says, so that the same table read twice adds nothing. */
function numbered(entries) {
  const seen = new Map();
  return entries.map((entry) => {
    if (entry.id) return entry;
    const said = JSON.stringify([entry.tank, timeOf(entry.at), entry.what, entry.value]);
    seen.set(said, (seen.get(said) ?? 0) + 1);
    return { ...entry, id: `row ${digest(said)} ${seen.get(said)}` };
  });
}
