// Of which plant or animal of the tank an entry is, where that may be left open.

import { listOf, nameOf, RECORD_OF } from "./names.js";
import { tap, taps } from "./sheet.js";

const ANY = { plants: "Of which plant, if of one", animals: "Which animal, if you know" };

/** The part of the sheet, and which one is chosen; nothing where the kind needs none, or has it already. */
export function ofWhich(here) {
  const list = listOf(here.kind);
  const held = list && !here.kind.must.includes("what") ? (here.tank[list] ?? []).map((row) => row[RECORD_OF[list]]) : [];
  let chosen = here.edit?.what ?? here.chosenOf ?? null;
  if (!held.length) return { part: "", chosen: () => (list && !here.what?.what ? chosen : null) };
  const buttons = held.map((key) => {
    const button = tap(nameOf(list, key), () => {
      chosen = here.chosenOf = chosen === key ? null : key;
      for (const [at, one] of buttons.entries()) one.setAttribute("aria-pressed", String(held[at] === chosen));
    }, { pressed: chosen === key });
    return button;
  });
  return { part: taps(ANY[list], buttons), chosen: () => chosen };
}
