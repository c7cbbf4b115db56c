// Of which plant or animal of the tank an entry is, where that may be left open.

import { floats, listOf, nameOf } from "./names.js";
import { RECORD_OF } from "./occupants.js";
import { tap, taps } from "./sheet.js";

const ANY = { plants: "Of which plant, if of one", animals: "Which animal, if you know" };

const THIN = "thin"; // of what floats

/** What floats of the plants that live there; all, where nothing is known to. What was chosen before stays too. */
function floating(lives, chosen) {
  return lives.some(floats) ? lives.filter((key) => floats(key) || key === chosen) : lives;
}

/** The part of the sheet, and which one is chosen; nothing where the kind needs none, or has it already. */
export function ofWhich(here) {
  const list = listOf(here.kind);
  let chosen = here.edit?.what ?? here.chosenOf ?? null;
  const lives = list && !here.kind.must.includes("what") ? here.lives[list].map((row) => row[RECORD_OF[list]]) : [];
  const held = here.kind.kind === THIN ? floating(lives, chosen) : lives;
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
