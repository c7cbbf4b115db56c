// How the tanks stand: the last answer kept with each is shown at once, Python makes it anew in the background.

import { ask } from "../runtime.js";
import { chosenUnits } from "../device-choices.js";
import { day } from "./shelf-start.js";
import { ROUND } from "./settings.js";
import { aged, overtaken } from "./overtaken.js";

/** Paint anew after each change of the shelf while the page stands; an answer that is being kept is none, nor is a choice. */
export function onEachChange(store, box, paint) {
  const stop = store.onChange(({ only }) => {
    if (!box.isConnected) stop();
    else if (!only) paint();
  });
}

/** A mark of what an answer was made from: another day, unit, tank or entry gives another mark. */
function madeFrom(tank, entries) {
  let mark = 0x811c9dc5;
  for (const letter of JSON.stringify([day(), chosenUnits(), tank, entries])) mark = Math.imul(mark ^ letter.codePointAt(0), 0x01000193);
  return mark >>> 0;
}

/** The kept answer of a tank as {outputs, html, spark, made}, or null; what no longer holds of it is said. */
export async function keptStanding(store, tank) {
  const kept = await store.standing(tank.id);
  return kept && (await store.changedSince(tank.id, kept.made)) ? overtaken(kept) : aged(kept);
}

/** The answer of a tank, from Python unless the kept one is of just these figures. */
export async function standingNow(store, tank) {
  const made = new Date().toISOString(); // before the log is read: what is logged meanwhile is not in the answer
  const [entries, kept] = await Promise.all([store.entries({ tank: tank.id }), store.standing(tank.id)]);
  const from = madeFrom(tank, entries);
  if (kept?.from === from) return kept;
  const units = chosenUnits();
  const reply = await ask({ calculator: "standing", given: { tank, entries, today: day() }, given_in: "metric", own: true, units });
  const standing = { ...kindly(reply), from, made };
  if (standing.outputs) await store.keepStanding(tank.id, standing).catch(() => {}); // no room: it is shown all the same
  return standing;
}

function kindly(reply) {
  const wrong = Object.entries(reply.problems ?? {}).map(([path, text]) => `${path}: ${text}`).join(" ");
  if (!reply.answer) return { wrong: reply.needed?.text ?? wrong };
  const [drawn] = Object.values(reply.answer.series ?? {});
  const spark = drawn && { label: drawn.label, unit: drawn.unit, x: drawn.x, y: drawn.y };
  return { outputs: reply.answer.outputs, html: reply.painted.html, spark };
}

/** All tanks: order, minutes of the week and the calendar; kept as the last round. */
export async function roundNow(store) {
  const [tanks, entries, kept] = await Promise.all([store.tanks(), store.entries({}), store.setting(ROUND)]);
  if (!tanks.length) return null;
  const from = madeFrom(tanks, entries);
  if (kept?.from === from) return kept;
  const reply = await ask({ calculator: "round", given: { tanks, entries, today: day() }, given_in: "metric", own: true, units: chosenUnits() });
  if (!reply.answer) return null;
  const { order, today, minutes_week, calendar } = reply.answer.outputs;
  const made = { from, day: day(), order, today, minutes_week, calendar };
  await store.keepRound(made).catch(() => {}); // no room: as above
  return made;
}
