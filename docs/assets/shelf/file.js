// A file that the keeper chose: its size first, then its text, then its structure.

import { fileFromCsv } from "./csv.js";
import { fileWith, guarded } from "./file-guard.js";
import { ShelfError } from "./shelf-error.js";

const LARGEST = 20_000_000; // octets; a season of ten tanks takes half a million
const MEGA = 1_000_000;

/**
 * The contract's file object, ready for `compare` and `merge`, from a file of ours (JSON), of readings (CSV) or of the
 * calculations that older versions saved. Throws `ShelfError` with the reason.
 * @param {File} file
 * @param {{id: string, name: string}[]} tanks those of the shelf, whose names stand in a CSV
 */
export async function readShelfFile(file, tanks) {
  if (file.size > LARGEST) throw new ShelfError("broken", `${file.name} has ${Math.ceil(file.size / MEGA)} MB; at most ${LARGEST / MEGA} MB are read. Nothing was changed.`);
  let text;
  try {
    text = new TextDecoder("utf-8", { fatal: true }).decode(await file.arrayBuffer());
  } catch (refusal) {
    const reason = refusal instanceof TypeError ? "is not text in UTF-8" : "could not be read";
    throw new ShelfError("broken", `${file.name} ${reason}. Nothing was changed.`);
  }
  return shelfFileOf(text, file.name, tanks);
}

/** The same from a text. */
export function shelfFileOf(text, name, tanks) {
  if (!text.trim()) throw new ShelfError("broken", `${name} is empty. Nothing was changed.`);
  if (!/^\s*[[{]/.test(text)) return guarded(fileFromCsv(text, tanks));
  let data;
  try {
    data = JSON.parse(text);
  } catch {
    throw new ShelfError("broken", `${name} is no whole JSON file: it was cut off or changed. Nothing was changed here.`);
  }
  return guarded(Array.isArray(data) ? fileWith({ kept: data }) : data);
}
