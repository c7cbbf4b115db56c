// Times as the log writes them.

import { timeOf } from "./operations.js";

/** A moment by this device's clock, without its offset; to the minute, as a field of date and time wants it. */
export function localTime(moment = new Date(), letters = 16) {
  return new Date(moment.getTime() - moment.getTimezoneOffset() * 60_000).toISOString().slice(0, letters);
}

/** A time as a date-time with this device's offset, so that its first ten letters are the keeper's own day. */
export function localDateTime(time = new Date()) {
  const offset = -time.getTimezoneOffset();
  const two = (number) => String(number).padStart(2, "0");
  const size = Math.abs(offset);
  return `${localTime(time, 19)}${offset < 0 ? "-" : "+"}${two(Math.floor(size / 60))}:${two(size % 60)}`;
}

const WRITTEN = /^(\d{4})-(\d{2})-(\d{2})(?:[T ](\d{2}):(\d{2})(?::(\d{2})(?:\.\d+)?)?(Z|[+-]\d{2}:?\d{2})?)?$/;

/** A written date or date-time as the log writes it; a date alone is its noon. Null where it is no date of the calendar. */
export function dateTimeOf(text) {
  if (!Number.isNaN(timeOf(text)) && /T.*(Z|[+-]\d{2}:\d{2})$/.test(text)) return text; // as the log has it already
  const [, year, month, day, hour, minute, second, zone] = WRITTEN.exec(text) ?? [];
  if (!year || !isDay(Number(year), Number(month), Number(day))) return null;
  const offset = zone?.replace(/^(.\d{2})(\d{2})$/, "$1:$2") ?? "";
  const time = new Date(`${year}-${month}-${day}T${hour ?? "12"}:${minute ?? "00"}:${second ?? "00"}${offset}`);
  return Number.isNaN(time.getTime()) ? null : localDateTime(time);
}

function isDay(year, month, day) {
  const date = new Date(Date.UTC(year, month - 1, day));
  return date.getUTCMonth() === month - 1 && date.getUTCDate() === day;
}
