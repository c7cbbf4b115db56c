// Values by name that are no tank's: settings that go into a file, and what belongs to this device alone.

const SETTING = "setting ";
export const AGAIN = "again"; // what was chosen in forms, by tank and calculator
export const ROUND = "round"; // Python's last answer for all tanks
export const TICKS = "round ticks"; // of today: {day, done: ["tank task"]}
export const KITS = "kits"; // the unit and step of each reading's kit
export const HANDFUL = "handful_g";
export const SPOON = "spoon_g"; // grams of feed
export const CALL = "whom to call";
const DEVICE_ONLY = ["units", "plants", "copy", AGAIN, ROUND]; // settings that no file carries
export const CHOSEN = "chosen";
export const FRONT = "front"; // what the board shows first
export const BESIDE = "beside"; // what a file had beside our own keys: kept, and written again

export function settingRow(name, value) {
  return { name: SETTING + name, value };
}

export function standingRow(id, value) {
  return { name: `standing ${id}`, value };
}

/** The settings that a file carries, as an object. */
export function settingsOf(local) {
  const all = [...local].filter(([name]) => name.startsWith(SETTING)).map(([name, value]) => [name.slice(SETTING.length), value]);
  return Object.fromEntries(all.filter(([name]) => travels(name)));
}

export function travels(name) {
  return !DEVICE_ONLY.includes(name);
}
