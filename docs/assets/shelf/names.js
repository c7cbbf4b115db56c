// Names of plants and animals by their record's key, as the build wrote them.

import { table } from "./shelf-start.js";

let names = { plants: [], animals: [] };
let never = { keys: [], words: "" };
let floating = [];

/** Fetch the names once. */
export async function openNames() {
  if (names.plants.length) return;
  const read = await table("names");
  const row = ([key, name, ...also]) => ({ key, name, words: [name, ...also].join(" ").toLowerCase() });
  names = { plants: read.plants.map(row), animals: read.animals.map(row) };
  never = read.never;
  floating = read.floating;
}

/** Which list of names a kind of entry chooses from; undefined where it needs none. */
export function listOf({ of }) {
  return of === "plants" || of === "animals" ? of : undefined;
}

/** All of a list as {key, name, words}. */
export function allNames(list) {
  return names[list];
}

/** The warning for a plant that nobody is offered; empty for any other. */
export function neverOf(list, key) {
  return list === "plants" && never.keys.includes(key) ? never.words : "";
}

/** Whether a plant floats, by its record's form of growth. */
export function floats(key) {
  return floating.includes(key);
}

export function nameOf(list, key) {
  return names[list]?.find((one) => one.key === key)?.name ?? key;
}
