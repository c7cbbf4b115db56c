// Figures in the units that the keeper chose; the tank and its log hold metric ones whatever is shown. The table of
// fields says of each which unit that is, as the units of kits are said: a stored figure is (shown - zero) x factor.

import { chosenUnits } from "../device-choices.js";

const PLAIN_DIGITS = 4; // behind the point, of a figure in the unit in which it is stored

/**
 * How a field or a value of the table is shown: {unit, factor, zero, low, high, steps, digits?}.
 * @param {any} one its row of the table
 */
export function unitOf(one) {
  const steps = one.steps ?? (one.step ? [one.step] : [1]);
  const metric = { unit: one.unit ?? "", factor: 1, zero: 0, low: one.low ?? null, high: one.high ?? null, steps };
  return chosenUnits() === "us" && one.us ? one.us : metric;
}

/** A stored figure as it is shown. */
export function shown({ factor, zero, digits }, value) {
  return tidy(value / factor + zero, digits);
}

/** A shown figure as it is stored. */
export function stored({ factor, zero }, value) {
  return Number(((value - zero) * factor).toFixed(6)); // finer than what is shown, so that it comes back the same
}

/** The same within the limits of its row, which were rounded to be shown. */
export function storedWithin(one, unit, value) {
  return Math.min(one.high ?? Infinity, Math.max(one.low ?? -Infinity, stored(unit, value)));
}

export function tidy(value, digits = 0) {
  return Number(digits ? value.toPrecision(digits) : value.toFixed(PLAIN_DIGITS));
}

/** What a field shows of what the tank holds. */
export function written(one, unit, value) {
  if (value === null || value === undefined) return "";
  return String(one.kind === "number" ? shown(unit, value) : value);
}

/** A stored figure with its unit; nothing where there is no figure. */
export function inUnits(one, value) {
  const unit = unitOf(one);
  return typeof value === "number" ? `${shown(unit, value)} ${unit.unit}`.trim() : "";
}
