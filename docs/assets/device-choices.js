// What this device remembers: the units and the plants that were chosen. Nothing leaves it.
// Tanks, their log and what is kept for them stand on the shelf: shelf/store.js.

const UNITS = "mulmbook-units";
const PLACE = "mulmbook-place";
const PLANTS = "mulmbook-plants";
const MOST_PLANTS = 8;

export function chosenUnits() {
  return read(UNITS) === "us" ? "us" : "metric";
}

export function chooseUnits(units) {
  write(UNITS, units);
}

/** The place whose law the keeper asked for; nothing where none was chosen. */
export function chosenPlace() {
  const place = read(PLACE);
  return typeof place === "string" ? place : "";
}

export function choosePlace(place) {
  write(PLACE, place);
}

/** Keys of the plants chosen here before, the latest first. */
export function chosenPlants() {
  const list = read(PLANTS);
  return Array.isArray(list) ? list.filter((key) => typeof key === "string") : [];
}

export function rememberPlant(key) {
  write(PLANTS, [key, ...chosenPlants().filter((other) => other !== key)].slice(0, MOST_PLANTS));
}

function read(name) {
  try {
    return JSON.parse(localStorage.getItem(name));
  } catch {
    return null; // storage is off, or holds what we did not write
  }
}

function write(name, value) {
  try {
    localStorage.setItem(name, JSON.stringify(value));
    return true;
  } catch {
    return false;
  }
}
