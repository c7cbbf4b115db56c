// The keeper's own copy of the shelf: saved to a file, and asked for after a month.

import { csvOf } from "./csv.js";
import { timeOf } from "./operations.js";
import { shareOrSave } from "./share.js";
import { localTime } from "./when.js";

const MONTH = 30 * 24 * 3_600_000; // ms
const COPIED = "copy";

/** Save or share the whole shelf, and remember when. @returns {Promise<"shared" | "saved" | "cancelled">} */
export async function saveCopy(shelf) {
  const file = shelf.toFile();
  const came = await shareOrSave(`mulmbook-tanks-${file.saved.slice(0, 10)}.json`, "application/json", JSON.stringify(file, null, 1));
  if (came !== "cancelled") await shelf.saveSetting(COPIED, file.saved);
  return came;
}

/** Save or share all readings as a table. */
export async function saveReadings(shelf) {
  return shareOrSave(`mulmbook-readings-${localTime(new Date(), 10)}.csv`, "text/csv", await csvOf(shelf));
}

/** Save or share the calendar (iCalendar text) that Python wrote. */
export async function saveCalendar(text) {
  return shareOrSave("mulmbook-tanks.ics", "text/calendar", text);
}

/** Whether a copy is due: something of the keeper's own was written since the last one, which is a month old. */
export async function copyDue(shelf, now = Date.now()) {
  if (!(await shelf.tanks()).some((tank) => !tank.demo)) return false;
  const { first, last } = shelf.written();
  const copied = timeOf(await shelf.setting(COPIED));
  return Number.isNaN(copied) ? now - first >= MONTH : last > copied && now - copied >= MONTH;
}
