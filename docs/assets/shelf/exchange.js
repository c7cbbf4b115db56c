// The shelf as a file, and a file taken into the shelf.

import { compared, mergeParts } from "./difference.js";
import { fileWith } from "./file-guard.js";
import { BESIDE, settingRow, settingsOf } from "./settings.js";

const OWN_KEYS = ["format", "version", "saved", "tanks", "entries", "kept", "settings"];

/** The contract's file, with kept calculations and settings beside it. */
export function fileOf({ view, local }) {
  const { tanks, entries, kept } = view.shown();
  return structuredClone({
    ...local.get(BESIDE),
    ...fileWith({ tanks: [...tanks.values()], entries, kept, settings: settingsOf(local) }),
  });
}

/** What a file would change; nothing is changed. Throws `ShelfError` where entries have no tank. */
export function compareFile({ view, local }, file) {
  return compared(file, view, settingsOf(local));
}

/** Take a file in, in one transaction, as one action. Returns what `compareFile` returned. */
export async function mergeFile(log, file, returned, action = undefined) {
  const difference = compareFile(log, file);
  const { parts, settings } = mergeParts(file, log.view, settingsOf(log.local), returned);
  const beside = Object.fromEntries(Object.entries(file).filter(([key]) => !OWN_KEYS.includes(key)));
  const rows = settings.map(([name, value]) => settingRow(name, value));
  if (Object.keys(beside).length) rows.push({ name: BESIDE, value: { ...log.local.get(BESIDE), ...beside } });
  await log.write({ parts, local: rows }, { unsaved: file, action });
  return difference;
}
