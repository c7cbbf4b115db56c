// Days as the keeper says them.

import { localTime } from "./when.js";

/** The day on this device, as YYYY-MM-DD; `back` days before it. */
export function day(back = 0) {
  const then = new Date();
  then.setDate(then.getDate() - back);
  return localTime(then, 10);
}

const WORDS = new Intl.DateTimeFormat(undefined, { day: "numeric", month: "short" }); // made once: it takes longer than all its uses

const OTHER_YEAR = new Intl.DateTimeFormat(undefined, { day: "numeric", month: "short", year: "numeric" });

/** A date in the words of the device, with its year where that is not this one. */
export function dayInWords(at) {
  const then = new Date(at.length === 10 ? `${at}T12:00` : at);
  return (then.getFullYear() === new Date().getFullYear() ? WORDS : OTHER_YEAR).format(then);
}
