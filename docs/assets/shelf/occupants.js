// What lives in a tank now, as Python said it with the last standing that is kept; rows that were written into the
// tank since then go before it, and a tank that Python has not seen yet stands as it was written.

import { timeOf } from "./operations.js";

/** The key of a tank's rows under which the record stands. */
export const RECORD_OF = { plants: "plant", animals: "animal" };
const AMOUNT = { plants: "wet_g", animals: "count" };

/** `{plants, animals}` of a tank, in rows as its own. */
export async function livesIn(store, tank) {
  return livesOf(tank, await store.standing(tank.id));
}

export function livesOf(tank, standing) {
  return { plants: rowsOf("plants", tank, standing), animals: rowsOf("animals", tank, standing) };
}

function rowsOf(list, tank, standing) {
  const named = RECORD_OF[list];
  const written = tank[list] ?? [];
  const worked = standing?.outputs?.lives?.[list];
  const later = new Map(written.filter((row) => !worked || timeOf(row.entered) > timeOf(standing.made)).map((row) => [row[named], row]));
  const known = new Map((worked ?? []).map((row) => [row[named], row]));
  return [...new Map([...known, ...later]).values()].filter((row) => !later.has(row[named]) || row[AMOUNT[list]] !== 0);
}
