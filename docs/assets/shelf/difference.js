// What a file of the shelf would change here, and the operations that take it in.

import { isSame } from "./item.js";
import { timeOf } from "./operations.js";
import { travels } from "./settings.js";
import { ShelfError } from "./shelf-error.js";

/** @typedef {{added: number, returned: number, changed: number, older: number, same: number}} Counts */

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

/** Every item of a file with its relation. Throws `ShelfError` where an entry's tank is neither in the file nor here. */
function planOf(file, view) {
  const lists = { tank: file.tanks ?? [], entry: file.entries ?? [], kept: file.kept ?? [] };
  const known = new Set([...lists.tank.map(({ id }) => id), ...view.shown().tanks.keys()]);
  const orphan = lists.entry.findIndex(({ tank }) => !known.has(tank));
  if (orphan >= 0) throw new ShelfError("broken", `Nothing was changed. entries[${orphan + 1}].tank: ${lists.entry[orphan].tank} is neither in the file nor on the shelf.`);
  return Object.entries(lists).flatMap(([of, list]) => list.map((item) => ({ of, item, is: relation(of, item, view) })));
}

/**
 * Counts over tanks, entries and kept calculations; for each tank of the file how it stands, the keys that differ and the
 * counts of its entries; and the names of settings that are new here.
 * @returns {Counts & {tanks: {id: string, name: string, is: string, keys: string[], entries: Counts}[], settings: string[]}}
 */
export function compared(file, view, settings) {
  const plan = planOf(file, view);
  const byTank = new Map();
  for (const one of plan) {
    if (one.of !== "entry") continue;
    if (!byTank.has(one.item.tank)) byTank.set(one.item.tank, []);
    byTank.get(one.item.tank).push(one);
  }
  const tanks = plan.filter(({ of }) => of === "tank").map(({ item, is }) => tankRow(item, is, byTank.get(item.id) ?? [], view));
  return { ...counted(plan), tanks, settings: newSettings(file, settings).map(([name]) => name) };
}

function tankRow(item, is, entries, view) {
  const keys = is === "changed" || is === "older" ? differingKeys(item, view.items.tank.get(item.id).value) : [];
  return { id: item.id, name: item.name, is, keys, entries: counted(entries) };
}

/** @returns {Counts} */
function counted(plan) {
  const counts = { added: 0, returned: 0, changed: 0, older: 0, same: 0 };
  for (const { is } of plan) counts[is] += 1;
  return counts;
}

/** Settings of the file that are not set here; those that are set here stay. */
function newSettings(file, settings) {
  return Object.entries(file.settings ?? {}).filter(([name]) => travels(name) && !Object.hasOwn(settings, name));
}

/** The operations and settings that take a file in. Unless `returned`, what was removed here stays away with its entries. */
export function mergeParts(file, view, settings, returned) {
  const plan = planOf(file, view);
  const away = new Set(returned ? [] : plan.filter(({ of, is }) => of === "tank" && is === "returned").map(({ item }) => item.id));
  const taken = ["added", "changed", ...(returned ? ["returned"] : [])];
  const parts = plan
    .filter(({ of, item, is }) => taken.includes(is) && !(of === "entry" && away.has(item.tank)))
    .map(({ of, item: { id, changed, ...values }, is }) => ({ op: of, key: id, values, whole: is !== "changed" }));
  return { parts, settings: newSettings(file, settings) };
}
