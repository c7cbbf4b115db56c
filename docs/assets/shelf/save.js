// Saving one tank, entry or kept calculation: only the keys that the caller changed are written.

import { faultOf, isSame } from "./item.js";
import { ShelfError } from "./shelf-error.js";

/**
 * Write the keys of an item that differ from what the caller had read, so that what another tab changed meanwhile stays.
 * @param {import("./log.js").Log} log
 * @param {"tank" | "entry" | "kept"} of
 * @param {Record<string, any>} item whole, with its id; `changed` says which state the caller had read
 * @param {unknown} unsaved what an error carries back to the form
 * @param {string} [action] the tap that it is part of
 */
export async function saveItem(log, of, item, unsaved, action = undefined) {
  const fault = faultOf(of, item);
  if (fault) throw new ShelfError("broken", fault, unsaved);
  const { id, changed, ...values } = item;
  const known = log.view.items[of].get(id);
  const before = known && !known.dropped && ((changed && log.view.asOf(of, id, changed)) ?? known.value);
  const part = before ? { op: of, key: id, values: differing(values, before) } : { op: of, key: id, values, whole: true };
  if (Object.keys(part.values).length) await log.write({ parts: [part] }, { unsaved, action });
  return structuredClone(log.view.items[of].get(id).value);
}

/** The keys that differ; one that is gone is set to null. */
function differing(values, { id, changed, ...before }) {
  const keys = new Set([...Object.keys(values), ...Object.keys(before)]);
  return Object.fromEntries([...keys].filter((key) => !isSame(values[key], before[key])).map((key) => [key, values[key] ?? null]));
}
