// A calculator's form filled from the tank that the keeper stands at. Which figures are the tank's is remembered
// until they are changed; a changed one is for that answer alone, unless it is saved to the tank.

import { borrow } from "../borrowed.js";
import { collect, fill, isBlank, openFilled } from "../form.js";
import { chosenLast } from "./again.js";
import { called, shelf, table, tankHere } from "./shelf-start.js";
import { filled, filledAtOnce } from "./fill.js";
import { markForm, tankKeys, text } from "./fill-marks.js";
import { newFigures } from "./fill-news.js";
import { inFormUnits } from "./fill-units.js";
import { rememberLead } from "./lead.js";

/**
 * Fill the blank fields of the form from the tank here: its own fields at once, the rest when Python runs. Whether
 * anything was filled in metric units. Beside figures of a keeper in other units the tank's are changed into those, and
 * the form is answered anew from here. `before` is called where there is a tank, ahead of its figures.
 */
export async function fillFromTank(here, before = () => {}) {
  const tank = await tankHere().catch(() => null);
  if (!tank || !here.form.isConnected) return false;
  before();
  const early = here.units === "metric" ? await filledAtOnce(here.name, tank) : null;
  if (early) put(here, tank, early);
  const found = await figuresOf(here, tank);
  if (!found || !here.form.isConnected) return false;
  if (here.units === "metric" || isBlank(here)) {
    put(here, tank, found);
    return tankKeys(here).length > 0;
  }
  put(here, tank, found, await inFormUnits(here.name, found.values, here.units));
  answerAnew(here);
  return false;
}

async function figuresOf(here, tank) {
  const store = await shelf();
  return filled(here.name, tank, await store.entries({ tank: tank.id }), await chosenLast(store, tank, here.name));
}

/** As if the keeper had changed the form: it is remembered and answered. */
function answerAnew(here) {
  openFilled(here.form, here.empty);
  here.form.dispatchEvent(new Event("input"));
}

/** Put figures into what is blank; what the keeper has typed meanwhile stays. `shown` are the values as the form has them. */
function put(here, tank, { values, from, paths }, shown = values) {
  const now = collect(here.form);
  const held = here.tank?.held ?? {};
  /** @param {[string, any]} pair */
  const free = ([key]) => key in now && (text(now[key]) === text(here.empty[key]) || text(now[key]) === held[key]);
  take(here, tank, { values, from, paths }, Object.fromEntries(Object.entries(shown).filter(free)));
}

/** Put figures into the form and remember that they are the tank's, and from which figures of it. */
function take(here, tank, { values, from, paths }, given) {
  fill(here.form, given);
  const after = collect(here.form);
  const held = { ...here.tank?.held };
  for (const key of Object.keys(given)) {
    if (text(after[key]) === text(here.empty[key])) delete held[key];
    else held[key] = text(after[key]);
  }
  here.tank = { id: tank.id, name: called(tank), demo: Boolean(tank.demo), held, values, paths, from };
  if (tank.demo) borrow(here, `the demo tank ${tank.name}`, tankKeys(here)); // none of it may pass for the keeper's own
  markForm(here);
}

/** Take out what is still as the last tank had it, then fill from the one chosen now; as fillFromTank says. */
export async function refill(here) {
  const keys = tankKeys(here);
  fill(here.form, Object.fromEntries(keys.map((key) => [key, here.empty[key]])));
  here.tank = null;
  if (keys.length) here.borrowed = null;
  markForm(here);
  if (await fillFromTank(here)) return true;
  if (here.units === "metric" || isBlank(here)) return keys.length > 0;
  answerAnew(here);
  return false;
}

/** What was changed on the shelf, here or in another tab, changes the form that was filled from it. */
async function followShelf(here) {
  const store = await shelf().catch(() => null);
  if (!store) return; // no storage here: nothing was filled
  let stood = await store.chosen();
  const stop = store.onChange(async ({ only }) => {
    if (!here.form.isConnected) return stop();
    const before = stood;
    stood = await store.chosen();
    if (only || !here.tank) return undefined;
    if (stood === before || stood === here.tank.id) return follow(here, store);
    return (await refill(here)) ? answerAnew(here) : undefined; // another tab stands at another tank, and so does the head
  });
  follow(here, store); // a form that comes back with its entry of the history may be of before
}

/** Figures that are still as the tank had them follow it; what the keeper typed or emptied stays theirs. */
async function follow(here, store) {
  const { tank, units } = here;
  const now = tank && (await store.tank(tank.id));
  const found = now && (await figuresOf(here, now));
  if (!found) return;
  const { again } = await table("fields");
  const { changed, fresh } = await newFigures(here.name, { before: tank.values ?? {}, after: found.values, units, mine: again[here.name] });
  if (!changed.length) return;
  if (!here.form.isConnected || here.tank?.id !== tank.id) return;
  if (here.tank !== tank || here.units !== units) {
    await follow(here, store); // the form has changed meanwhile
    return;
  }
  const still = tankKeys(here);
  const stands = collect(here.form);
  const free = (key) => key in stands && (still.includes(key) || (!here.tank.held[key] && text(stands[key]) === text(here.empty[key])));
  const given = Object.fromEntries(changed.filter((key) => free(key) && (key in fresh || !(key in found.values))).map((key) => [key, fresh[key] ?? here.empty[key]]));
  const before = text(stands);
  take(here, now, found, given);
  if (text(collect(here.form)) !== before) answerAnew(here);
}

/** The same figures stand in the form in other units. */
export function tankAnew(here, keys) {
  if (!here.tank) return;
  const now = collect(here.form);
  for (const key of keys) here.tank.held[key] = text(now[key]);
}

/** The form keeps to its tank: links in the answer lead on with it, and what is changed in it comes here. */
export function leadOn(here) {
  followShelf(here);
  here.place.addEventListener("click", ({ target }) => {
    const link = target.closest("#answer a");
    if (link && here.tank) rememberLead(link.href);
  });
}
