// The readings of a diagnosis, filled from the tank that the keeper stands at.

import { collect, fill } from "../form.js";
import { called, shelf, tankHere } from "./shelf-start.js";
import { filled } from "./fill.js";

const FEW = "All may stay empty; each sharpens the answer.";

/** Fill the readings while none stands there; whether any was filled. Those of another tank are taken out first. */
export async function fillDiagnosis(here) {
  const tank = await tankHere().catch(() => null);
  if (!here.place.isConnected) return false;
  const line = here.place.querySelector("#diagnosis-more summary small");
  const before = here.tankReadings ?? {};
  const mine = collect(here.form);
  const still = Object.keys(before).filter((key) => mine[key] === before[key]);
  fill(here.form, Object.fromEntries(still.map((key) => [key, ""])));
  here.tankReadings = {};
  line.textContent = FEW;
  if (!tank) return still.length > 0;
  const store = await shelf();
  const found = await filled("diagnose", tank, await store.entries({ tank: tank.id }));
  const now = collect(here.form);
  const given = Object.fromEntries(Object.entries(found?.values ?? {}).filter(([key]) => now[key] === ""));
  fill(here.form, given);
  const after = collect(here.form);
  here.tankReadings = Object.fromEntries(Object.keys(given).map((key) => [key, after[key]]));
  const many = Object.keys(given).length;
  if (many) line.textContent = `${many === 1 ? "One reading" : `${many} readings`} from ${called(tank)}; the rest may stay empty.`;
  return many > 0 || still.length > 0;
}

/** The same readings stand there in other units. */
export function diagnosisAnew(here) {
  const now = collect(here.form);
  for (const key of Object.keys(here.tankReadings ?? {})) here.tankReadings[key] = now[key];
}
