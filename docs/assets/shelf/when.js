// Times as the log writes them.

/** A time as a date-time with this device's offset, so that its first ten letters are the keeper's own day. */
export function localDateTime(time = new Date()) {
  const offset = -time.getTimezoneOffset();
  const local = new Date(time.getTime() + offset * 60_000).toISOString().slice(0, 19);
  const two = (number) => String(number).padStart(2, "0");
  const size = Math.abs(offset);
  return `${local}${offset < 0 ? "-" : "+"}${two(Math.floor(size / 60))}:${two(size % 60)}`;
}
