// Days as the keeper says them.

import { localTime } from "./when.js";

/** The day on this device, as YYYY-MM-DD; `back` days before it. */
export function day(back = 0) {
  const then = new Date();
  then.setDate(then.getDate() - back);
  return localTime(then, 10);
}

/** @type {Map<boolean, Intl.DateTimeFormat>} */
const formats = new Map(); // each made once, and where a date is said first: that takes longer than all its uses
const DAY_AND_MONTH = /** @type {const} */ ({ day: "numeric", month: "short" });

function words(isOfThisYear) {
  if (!formats.has(isOfThisYear)) {
    formats.set(isOfThisYear, new Intl.DateTimeFormat(undefined, isOfThisYear ? DAY_AND_MONTH : { ...DAY_AND_MONTH, year: "numeric" }));
  }
  return formats.get(isOfThisYear);
}

/** A date in the words of the device, with its year where that is not this one. */
export function dayInWords(at) {
  const then = new Date(at.length === 10 ? `${at}T12:00` : at);
  return words(then.getFullYear() === new Date().getFullYear()).format(then);
}
