// Says beside each field what comes from the tank, and offers to save to it what was changed.

import { collect, parts } from "../form.js";
import { element } from "../paint.js";
import { entered } from "./dated-values.js";
import { shelf, table } from "./shelf-start.js";
import { newId } from "./operations.js";
import { saidBelow } from "./sheet.js";

/** What a field holds, to be compared. */
export const text = (value) => JSON.stringify(value);

/** The keys whose figures are still the tank's. */
export function tankKeys(here, now = collect(here.form)) {
  return Object.keys(here.tank?.held ?? {}).filter((key) => text(now[key]) === here.tank.held[key]);
}

/** Write the marks of the form anew. */
export function markForm(here) {
  for (const old of here.form.querySelectorAll(".from-tank")) old.remove();
  const line = here.place.querySelector("#from-tank");
  const { tank } = here;
  if (line) line.hidden = !tank;
  if (!tank) return;
  const now = collect(here.form);
  const still = tankKeys(here, now);
  if (line) line.textContent = still.length ? `From ${tank.name}: ${still.length === 1 ? "one field" : `${still.length} fields`}, marked below.` : `Nothing here is from ${tank.name}.`;
  for (const part of parts(here.form)) {
    const { key } = part.dataset;
    const isTanks = still.includes(key);
    const changed = !isTanks && text(now[key]) !== text(here.empty[key]) && tank.paths[key] && typeof now[key] === "string";
    if (isTanks) put(part, element("p", { className: "from-tank", textContent: fromWords(tank, key) }));
    else if (changed) put(part, offer(here, key));
  }
}

/** Where a figure is from, as Python said it; a demo tank's never without that word. */
function fromWords(tank, key) {
  const words = tank.from[key];
  if (!words) return `from ${tank.name}`;
  return tank.demo ? `${words}, demo` : words;
}

function put(part, mark) {
  const place = part.querySelector(":scope > .hint") ?? part.querySelector(":scope > legend");
  place.after(mark);
}

function offer(here, key) {
  const { tank } = here;
  const save = element("button", { type: "button", textContent: `Save to ${tank.name}` });
  save.onclick = () => saveTo(here, key);
  return element("p", { className: "from-tank changed" }, tank.held[key] === undefined ? "for this answer only " : "changed for this answer only ", save);
}

/** Python gave the figure in the tank's own units, as the page's address has it. */
async function saveTo(here, key) {
  const { tank } = here;
  const metric = here.metric?.[key];
  if (metric === undefined) return saidBelow("Not saved yet: the figure must hold first.");
  const store = await shelf();
  const action = newId();
  const value = Number.isFinite(Number(metric)) ? Number(metric) : metric;
  try {
    await store.saveTank(entered(await store.tank(tank.id), tank.paths[key], value, await table("fields")), { action });
  } catch (wrong) {
    if (!wrong.reason) throw wrong;
    return saidBelow(wrong.message);
  }
  tank.held[key] = text(collect(here.form)[key]);
  markForm(here);
  return saidBelow(`Saved to ${tank.name}.`, () => store.undo(action));
}
