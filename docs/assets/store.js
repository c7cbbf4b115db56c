// What this device remembers: the units chosen, and calculations kept by tank. Nothing leaves it.

const UNITS = "mulmbook-units";
const PLACE = "mulmbook-place";
const KEPT = "mulmbook-kept";
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

/** All kept calculations, oldest first: {id, tank, calculator, title, address, when, lines}, and page where it is no calculator's. */
export function kept() {
  const list = read(KEPT);
  return Array.isArray(list) ? list.filter(isKept) : [];
}

/** Returns whether the device had room for it. */
export function keep(calculation) {
  const list = kept();
  list.push({ id: newId(), when: new Date().toISOString(), ...calculation });
  navigator.storage?.persist?.();
  return write(KEPT, list);
}

/** An id that no other calculation has; a host without https offers no randomUUID. */
function newId() {
  return crypto.randomUUID?.() ?? Array.from(crypto.getRandomValues(new Uint8Array(16)), (octet) => octet.toString(16).padStart(2, "0")).join("");
}

/** Keys of the plants chosen here before, the latest first. */
export function chosenPlants() {
  const list = read(PLANTS);
  return Array.isArray(list) ? list.filter((key) => typeof key === "string") : [];
}

export function rememberPlant(key) {
  write(PLANTS, [key, ...chosenPlants().filter((other) => other !== key)].slice(0, MOST_PLANTS));
}

export function replaceKept(list) {
  return write(KEPT, list.filter(isKept));
}

export function isKept(one) {
  const texts = ["id", "tank", "calculator", "title", "address", "when"];
  return Boolean(one) && texts.every((name) => typeof one[name] === "string") && Array.isArray(one.lines)
    && one.lines.every((line) => typeof line === "string") && /^[a-z-]*$/.test(one.calculator)
    && (one.page === undefined || /^[a-z-]+\/$/.test(one.page)) && !Number.isNaN(Date.parse(one.when));
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
