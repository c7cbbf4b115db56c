// When something was written into a tank: of what the log also tells, the later one holds.

import { withValue } from "./tank-paths.js";
import { localDateTime } from "./when.js";

/** A tank with another value at a path, and its moment where fields.json says that it may be read with a kit as well. */
export function entered(tank, path, value, { dated = [] }) {
  const made = withValue(tank, path, value);
  return dated.includes(path) ? { ...made, entered: { ...tank.entered, [path]: localDateTime() } } : made;
}

/** A row of plants or animals with the moment of its writing: what is logged later changes it. */
export function withMoment(row) {
  return { ...row, entered: localDateTime() };
}
