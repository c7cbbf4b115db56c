// What the shelf has to say anew to a form that was filled from it.

import { inFormUnits } from "./fill-units.js";
import { isSame } from "./item.js";

/**
 * The keys of what differs between two fillings of a calculator, and the figures that stand there now in the units of
 * the form; a key without a figure has none any more. What was chosen in the form itself, the keys of `mine`, is no news.
 */
export async function newFigures(calculator, { before, after, units, mine = [] }) {
  const changed = Object.keys({ ...before, ...after }).filter((key) => !mine.includes(key) && !isSame(after[key], before[key]));
  const figures = Object.fromEntries(changed.filter((key) => key in after).map((key) => [key, after[key]]));
  return { changed, fresh: changed.length ? await inFormUnits(calculator, figures, units) : {} };
}
