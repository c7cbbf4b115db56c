// A calculator's form filled from the tank that the keeper stands at. Which figures are the tank's is remembered
// until they are changed; a changed one is for that answer alone, unless it is saved to the tank.

import { borrow } from "../borrowed.js";
import { collect, fill } from "../form.js";
import { chosenLast } from "./again.js";
import { called, shelf, tankHere } from "./shelf-start.js";
import { filled, filledAtOnce } from "./fill.js";
import { markForm, tankKeys, text } from "./fill-marks.js";
import { rememberLead } from "./lead.js";

/**
 * Fill the blank fields of the form from the tank here: its own fields at once, the rest when Python runs.
 * Whether anything was filled.
 */
export async function fillFromTank(here) {
  const tank = await tankHere().catch(() => null);
  if (!tank || !here.form.isConnected) return false;
  const early = await filledAtOnce(here.name, tank);
  if (early) put(here, tank, early);
  const store = await shelf();
  const found = await filled(here.name, tank, await store.entries({ tank: tank.id }), await chosenLast(store, tank, here.name));
  if (!found || !here.form.isConnected) return false;
  put(here, tank, found);
  return tankKeys(here).length > 0;
}

/** Put figures into what is blank; what the keeper has typed meanwhile stays. */
function put(here, tank, { values, from, paths }) {
  const now = collect(here.form);
  const held = here.tank?.held ?? {};
  /** @param {[string, any]} pair */
  const free = ([key]) => key in now && (text(now[key]) === text(here.empty[key]) || text(now[key]) === held[key]);
  const given = Object.fromEntries(Object.entries(values).filter(free));
  fill(here.form, given);
  const after = collect(here.form);
  const filledIn = Object.keys(given).filter((key) => text(after[key]) !== text(here.empty[key]));
  here.tank = { id: tank.id, name: called(tank), demo: Boolean(tank.demo), held: { ...held, ...Object.fromEntries(filledIn.map((key) => [key, text(after[key])])) }, paths, from };
  if (tank.demo) borrow(here, `the demo tank ${tank.name}`, tankKeys(here)); // none of it may pass for the keeper's own
  markForm(here);
}

/** Take out what is still as the last tank had it, then fill from the one chosen now. */
export async function refill(here) {
  const keys = tankKeys(here);
  fill(here.form, Object.fromEntries(keys.map((key) => [key, here.empty[key]])));
  here.tank = null;
  if (keys.length) here.borrowed = null;
  markForm(here);
  return (await fillFromTank(here)) || keys.length > 0;
}

/** The same figures stand in the form in other units. */
export function tankAnew(here, keys) {
  if (!here.tank) return;
  const now = collect(here.form);
  for (const key of keys) here.tank.held[key] = text(now[key]);
}

/** Links in the answer lead on with the same tank. */
export function leadOn(here) {
  here.place.addEventListener("click", ({ target }) => {
    const link = target.closest("#answer a");
    if (link && here.tank) rememberLead(link.href);
  });
}
