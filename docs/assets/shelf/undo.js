// Undoing a tap. Nothing leaves the log: an operation is added that takes an action's effect away.

import { MOVED } from "./operations.js";

/**
 * Undo an action, or the last one that is not undone yet.
 * @param {import("./log.js").Log} log
 * @param {string} [action]
 * @returns {Promise<{op: string, of: string, tanks: any[], entries: any[]} | null>} what it was, or null where there is nothing
 */
export async function undoAction(log, action) {
  const { operations, undone } = log.view;
  const last = operations.findLast((one) => one.op !== "undo" && one.action !== MOVED && !undone.has(one.action) && (!action || one.action === action));
  if (!last) return null;
  const parts = operations.filter((one) => one.action === last.action);
  const touched = { tanks: items("tank", parts, log.view), entries: items("entry", parts, log.view) };
  await log.write({ parts: [{ op: "undo", undoes: last.action }] }, { unsaved: null });
  return structuredClone({ op: last.op, of: last.of ?? last.op, ...touched });
}

/** The items that operations touched, as they stood until the undoing. */
function items(of, parts, view) {
  return parts.filter((one) => (one.op === "drop" ? one.of : one.op) === of).map(({ key }) => view.items[of].get(key)?.value).filter(Boolean);
}
