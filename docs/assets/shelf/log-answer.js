// What an answer measured, offered for the log of the tank that the keeper stands at. Python says what can be logged
// and in which words; nothing is written without a tap.

import { borrowedKeys } from "../borrowed.js";
import { element } from "../paint.js";
import { called, shelf, tankHere } from "./shelf-start.js";
import { newId } from "./operations.js";
import { saidBelow, tap, taps } from "./sheet.js";
import { standAt } from "./switch.js";
import { localDateTime } from "./when.js";

/** Offer it anew with each answer. */
export function offerLogOn(here) {
  here.form.addEventListener("answered", () => offerLog(here));
}

/** Fill the place that Python painted for it; there is none where the answer holds nothing to log. */
export async function offerLog(here) {
  const place = here.place.querySelector("#to-log");
  if (!place) return;
  const store = await shelf().catch(() => null);
  if (!store) return; // no storage here: no log
  const [tanks, tank] = await Promise.all([store.tanks(), tankHere()]);
  if (!place.isConnected) return; // a later answer has its own
  if (isAnothers(here, tank)) say(place, "Not for the log: some figures here are an example's.");
  else if (tank) offer(here, place, tank);
  else if (tanks.length) place.replaceChildren(taps(`Log ${place.dataset.words}: at which tank do you stand?`, tanks.map((one) => tap(called(one), () => standAt(one.id)))));
  else say(place, "To log it, begin a tank first: ", element("a", { href: new URL("shelf/", document.body.dataset.root).href, textContent: "the shelf" }));
}

/** Whether figures of an example are in it, or of a demo tank that is not the one it would be logged for. */
function isAnothers(here, tank) {
  return borrowedKeys(here).length > 0 && !(tank?.demo && here.tank?.id === tank.id);
}

function say(place, ...parts) {
  place.replaceChildren(element("p", {}, ...parts));
}

function offer(here, place, tank) {
  const { words, range } = place.dataset;
  if (here.logged === keyOf(place, tank)) return say(place, `${words} is in the log of ${called(tank)}.`);
  return place.replaceChildren(tap(`Log ${words} for ${called(tank)}`, () => log(here, place, tank), { small: range }));
}

/** One count of one tank; the same again is not offered twice. */
function keyOf({ dataset }, tank) {
  return [tank.id, dataset.kind, dataset.what, dataset.value].join(" ");
}

async function log(here, place, tank) {
  const { kind, what, value, step, words } = place.dataset;
  const button = place.querySelector("button");
  if (button.disabled) return;
  button.disabled = true; // a second tap while the first is being written
  const store = await shelf();
  const action = newId();
  try {
    await store.log({ tank: tank.id, at: localDateTime(), kind, what, value: Number(value), step: Number(step) }, { action });
  } catch (wrong) {
    if (!wrong.reason) throw wrong;
    button.disabled = false;
    saidBelow(wrong.message);
    return;
  }
  here.logged = keyOf(place, tank);
  await offerLog(here);
  saidBelow(`${words} logged, ${called(tank)}`, async () => {
    await store.undo(action);
    here.logged = "";
    await offerLog(here);
  });
}
