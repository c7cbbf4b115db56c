// The readings of a diagnosis, filled from the tank that the keeper stands at.

import { collect, fill } from "../form.js";
import { called, shelf, tankHere } from "./shelf-start.js";
import { filled } from "./fill.js";
import { newFigures } from "./fill-news.js";
import { inFormUnits } from "./fill-units.js";
import { onEachChange } from "./standings.js";

const NAME = "diagnose";
const FEW = "All may stay empty; each sharpens the answer.";

/** Fill the readings while none stands there; whether any was filled. Those of another tank are taken out first. */
export async function fillDiagnosis(here) {
  followShelf(here);
  const tank = await tankHere().catch(() => null);
  if (!here.place.isConnected) return false;
  const before = here.tankReadings ?? {};
  const mine = collect(here.form);
  const isTyped = Object.values(mine).some(Boolean);
  const still = Object.keys(before).filter((key) => mine[key] === before[key]);
  fill(here.form, Object.fromEntries(still.map((key) => [key, ""])));
  here.tankReadings = {};
  say(here, null);
  if (!tank) return still.length > 0;
  here.tankValues = await valuesOf(tank);
  // Beside figures that stand there in other units the tank's are changed into those; else the page changes all.
  const shown = isTyped ? await inFormUnits(NAME, here.tankValues, here.units) : here.tankValues;
  const now = collect(here.form);
  put(here, tank, Object.fromEntries(Object.entries(shown).filter(([key]) => now[key] === "")));
  return Object.keys(here.tankReadings).length > 0 || still.length > 0;
}

async function valuesOf(tank) {
  const store = await shelf();
  return (await filled(NAME, tank, await store.entries({ tank: tank.id })))?.values ?? {};
}

/** Put readings into the form, and remember that they are the tank's. */
function put(here, tank, given) {
  fill(here.form, given);
  const after = collect(here.form);
  for (const key of Object.keys(given)) {
    if (after[key]) here.tankReadings[key] = after[key];
    else delete here.tankReadings[key];
  }
  say(here, tank);
}

function say(here, tank) {
  const many = Object.keys(here.tankReadings).length;
  here.place.querySelector("#diagnosis-more summary small").textContent = many ? `${many === 1 ? "One reading" : `${many} readings`} from ${called(tank)}; the rest may stay empty.` : FEW;
}

/** Readings that are still as the tank had them follow it; what the keeper typed stays theirs. */
async function followShelf(here) {
  if (here.follows) return;
  here.follows = true;
  const store = await shelf().catch(() => null);
  if (store) onEachChange(store, here.place, () => follow(here));
}

async function follow(here) {
  const { tankValues: before, units } = here;
  const tank = before && (await tankHere());
  if (!tank) return;
  const values = await valuesOf(tank);
  const { changed, fresh } = await newFigures(NAME, { before, after: values, units });
  if (!changed.length || !here.place.isConnected) return;
  if (here.tankValues !== before || here.units !== units) {
    await follow(here); // the form has changed meanwhile
    return;
  }
  const now = collect(here.form);
  const isFree = (key) => now[key] === (here.tankReadings[key] ?? "");
  here.tankValues = values;
  put(here, tank, Object.fromEntries(changed.filter(isFree).map((key) => [key, fresh[key] ?? ""])));
  here.form.dispatchEvent(new Event("input")); // as if the keeper had typed it: the page answers anew
}

/** The same readings stand there in other units. */
export function diagnosisAnew(here) {
  const now = collect(here.form);
  for (const key of Object.keys(here.tankReadings ?? {})) here.tankReadings[key] = now[key];
}
