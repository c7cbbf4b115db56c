// What a file of the shelf would change here, and the operations that take it in.

import { isSame } from "./item.js";
import { timeOf } from "./operations.js";

/**
 * How an item of a file stands to the shelf: "added" (not here), "returned" (removed here), "changed" (differs, and the
 * file's is not the older), "older" (differs, and was changed here later: ours stays), "same".
 */
function relation(of, item, view) {
  const known = view.items[of].get(item.id);
  if (!known) return "added";
  if (known.dropped || !known.value) return "returned";
  if (differingKeys(item, known.value).length === 0) return "same";
  return timeOf(item.changed) < timeOf(known.value.changed) ? "older" : "changed";
}

/** The keys of a file's item that say something else than here; a key that the file lacks says nothing. */
function differingKeys({ changed, ...item }, here) {
  return Object.keys(item).filter((key) => !isSame(item[key], here[key]));
}

function planOf(file, view) {
  const lists = { tank: file.tanks ?? [], entry: file.entries ?? [], kept: file.kept ?? [] };
  return Object.entries(lists).flatMap(([of, list]) => list.map((item) => ({ of, item, is: relation(of, item, view) })));
}

/**
 * Counts over tanks, entries and kept calculations, and the same for each tank of the file with the keys that change.
 * @typedef {{added: number, returned: number, changed: number, older: number, same: number}} Counts
 * @returns {Counts & {tanks: {id: string, name: string, is: string, keys: string[], entries: Counts}[], settings: string[]}}
 */
export function compared(file, view, settings) {
  const plan = planOf(file, view);
  const tanks = plan.filter(({ of }) => of === "tank").map(({ item, is }) => tankRow(item, is, plan, view));
  return { ...counted(plan), tanks, settings: newSettings(file, settings).map(([name]) => name) };
}

function tankRow(item, is, plan, view) {
  const keys = is === "changed" || is === "older" ? differingKeys(item, view.items.tank.get(item.id).value) : [];
  return { id: item.id, name: item.name, is, keys, entries: counted(plan.filter((one) => one.of === "entry" && one.item.tank === item.id)) };
}

/** @returns {Counts} */
function counted(plan) {
  const counts = { added: 0, returned: 0, changed: 0, older: 0, same: 0 };
  for (const { is } of plan) counts[is] += 1;
  return counts;
}

/** Settings of the file that are not set here; those that are set here stay. */
function newSettings(file, settings) {
  return Object.entries(file.settings ?? {}).filter(([name]) => !Object.hasOwn(settings, name));
}

/** The operations and settings that take a file in. */
export function mergeParts(file, view, settings, returned) {
  const taken = ["added", "changed", ...(returned ? ["returned"] : [])];
  const parts = planOf(file, view)
    .filter(({ is }) => taken.includes(is))
    .map(({ of, item: { id, changed, ...values }, is }) => ({ op: of, key: id, values, whole: is !== "changed" }));
  return { parts, settings: newSettings(file, settings) };
}
