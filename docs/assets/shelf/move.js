// Moves what older versions of the book kept in localStorage to the shelf. Nothing is lost: an old value goes only
// once the new one lies safely, and what cannot be read is set aside as it was found.

import { faultOf } from "./item.js";
import { isObject, MOVED, stamped } from "./operations.js";
import { settingRow } from "./settings.js";

const KEPT = "mulmbook-kept";
// These are also read before the shelf can be opened, so that they stay where they are; the shelf's setting follows.
const SETTINGS = {
  "mulmbook-units": { setting: "units", fits: (value) => value === "us" || value === "metric" },
  "mulmbook-plants": { setting: "plants", fits: (value) => Array.isArray(value) && value.every((key) => typeof key === "string") },
};

/** @param {import("./log.js").Log} log */
export async function moveOld(log) {
  const old = read([KEPT, ...Object.keys(SETTINGS)]);
  if (!old.size) return;
  const batch = { operations: [], onlyNew: true, local: [], aside: [] };
  const gone = [];
  for (const [name, text] of old) {
    const spoilt = name === KEPT ? moveKept(text, batch, log.view.last) : moveSetting(name, text, batch, log.local);
    if (spoilt) batch.aside.push(aside(name, text));
    if (spoilt || name === KEPT) gone.push([name, text]);
  }
  if (!batch.operations.length && !batch.local.length && !batch.aside.length && !gone.length) return;
  await log.place.write(batch);
  for (const [name, text] of gone) removeUnchanged(name, text);
  await log.readAll();
}

/** Returns whether the value as a whole could not be read; single calculations that cannot are set aside here. */
function moveKept(text, batch, last) {
  const list = parsed(text);
  if (!Array.isArray(list)) return true;
  const ids = new Set();
  for (const [index, one] of list.entries()) {
    const item = isObject(one) ? { ...one, id: ids.has(one.id) ? `${one.id} ${index}` : one.id } : null; // two of one id are two
    if (!item || typeof item.id !== "string" || faultOf("kept", item)) batch.aside.push(aside(KEPT, JSON.stringify(one)));
    else {
      const { id, ...values } = item;
      ids.add(id);
      // The operation's id is made of the calculation's, so that a move cut short can be done again.
      batch.operations.push(...stamped([{ op: "kept", key: id, values, whole: true, id: `moved ${id}`, action: MOVED }], last));
    }
  }
  return false;
}

function moveSetting(name, text, batch, local) {
  const { setting, fits } = SETTINGS[name];
  const value = parsed(text);
  if (!fits(value)) return true;
  const row = settingRow(setting, value);
  if (JSON.stringify(local.get(row.name)) !== JSON.stringify(value)) batch.local.push(row);
  return false;
}

function aside(from, text) {
  return { id: `${from} ${text}`, from, text, at: new Date().toISOString() };
}

function parsed(text) {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

function read(names) {
  try {
    return new Map(names.map((name) => [name, localStorage.getItem(name)]).filter(([, text]) => text !== null));
  } catch {
    return new Map(); // storage is off
  }
}

/** Another tab may have written meanwhile: its value is moved the next time. */
function removeUnchanged(name, text) {
  if (localStorage.getItem(name) === text) localStorage.removeItem(name);
}
