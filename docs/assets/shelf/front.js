// What the board shows before the log has been read: the cards as they were last, in one small row beside the log.
// The row says of how many operations it was made; with one more or less in the log it is not shown.

import { Database } from "./database.js";
import { livesOf } from "./occupants.js";
import { overtaken } from "./overtaken.js";
import { FRONT } from "./settings.js";

/**
 * @typedef {object} Front
 * @property {number} operations how many the log had
 * @property {{tank: {id: string, name: string, demo?: boolean, plants?: {plant: string}[]}, standing: any, minutes?: number}[]} cards in the board's
 *   order, with the minutes that are due on the day
 * @property {string} [day]
 * @property {number} [minutes] of the week, where they are known
 */

/** The board's last cards, read in one transaction with the length of the log; null where they are not of this log. */
export async function readFront() {
  const database = new Database(() => {});
  try {
    const { value, operations } = await database.readFront(FRONT);
    return value?.operations === operations ? /** @type {Front} */ (value) : null;
  } catch {
    return null; // the shelf itself says why, when it opens
  } finally {
    database.close();
  }
}

/** The row of some cards; of a standing only what a card paints. */
export function frontRow(cards, { operations, day, minutes }) {
  const small = cards.map(({ tank, standing, minutes: due }) => ({ tank: ofTank(tank, standing), standing: standing && ofCard(standing), minutes: due }));
  return { name: FRONT, value: { operations, cards: small, day, minutes } };
}

function ofTank(tank, standing) {
  const { id, name, demo } = tank;
  return { id, name, demo, plants: livesOf(tank, standing).plants.map(({ plant }) => ({ plant })) };
}

function ofCard({ outputs, spark, made, wrong }) {
  return { outputs: outputs && { verdict: outputs.verdict, sentence: outputs.sentence, due: outputs.due }, spark, made, wrong };
}

/**
 * The row once some operations were added to the log: entries overtake the calm of their tank, and after anything else
 * the board waits for the log. No row where there was none.
 * @param {Front | null | undefined} front
 */
export function frontAfter(front, operations) {
  if (!front) return [];
  const entries = operations.every((one) => one.op === "entry" && one.whole && one.values.tank);
  if (!entries) return [{ name: FRONT, value: null }];
  const tanks = new Set(operations.map((one) => one.values.tank));
  const cards = front.cards.map((one) => (tanks.has(one.tank.id) ? { ...one, standing: overtaken(one.standing) } : one));
  return [{ name: FRONT, value: { ...front, operations: front.operations + operations.length, cards } }];
}
