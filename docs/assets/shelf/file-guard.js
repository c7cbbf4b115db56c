// The structure that a file of the shelf must have before anything here touches it. What its values mean is checked
// in Python; this holds before Python has started.

import { faultOf, plainFault } from "./item.js";
import { isObject } from "./operations.js";
import { ShelfError } from "./shelf-error.js";

export const FORMAT = "mulmbook-tanks";
export const FILE_VERSION = 1;
const MOST = { tanks: 500, entries: 100_000, kept: 10_000 };
const KINDS = { tanks: "tank", entries: "entry", kept: "kept" };
const FAULTS_TOLD = 8;

/** A file object of ours. */
export function fileWith(parts) {
  return { format: FORMAT, version: FILE_VERSION, saved: new Date().toISOString(), tanks: [], entries: [], ...parts };
}

/**
 * The file, once nothing in it can do harm. Throws `ShelfError` ("newer" or "broken") with all reasons, the first few in words.
 * @param {any} data
 */
export function guarded(data) {
  if (!isObject(data) || data.format !== FORMAT) throw new ShelfError("broken", `This is no file of the shelf: its format is not "${FORMAT}".`);
  if (!Number.isInteger(data.version) || data.version < 1) throw new ShelfError("broken", "version: a whole number from 1 is needed.");
  if (data.version > FILE_VERSION) throw new ShelfError("newer", `This file was saved by a newer version of the book (its version is ${data.version}, ours ${FILE_VERSION}). Take the new version of the book, then read it again.`);
  const { tanks, entries, kept = [], ...rest } = data;
  const lists = { tanks, entries, kept };
  const settings = data.settings === undefined || isObject(data.settings) ? "" : "settings: an object is needed";
  const faults = [settings, plainFault(rest), ...Object.entries(lists).flatMap(([name, list]) => listFaults(name, list))].filter(Boolean);
  if (faults.length) throw new ShelfError("broken", inWords(faults));
  return { ...data, kept };
}

function listFaults(name, list) {
  if (!Array.isArray(list)) return [`${name}: a list is needed`];
  if (list.length > MOST[name]) return [`${name}: more than ${MOST[name]}`];
  const ids = new Set();
  return list.map((item, index) => {
    const fault = isObject(item) ? faultOf(KINDS[name], item) : "an object is needed";
    const twice = !fault && ids.has(item.id);
    ids.add(item?.id);
    if (fault || twice) return `${name}[${index + 1}]${fault ? `.${fault}` : `.id: ${item.id} stands twice`}`;
    return "";
  });
}

function inWords(faults) {
  const more = faults.length - FAULTS_TOLD;
  return `Nothing was changed. ${faults.slice(0, FAULTS_TOLD).join("; ")}${more > 0 ? `; and ${more} more` : ""}.`;
}
