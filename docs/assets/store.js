// What this device remembers: the units chosen, and calculations kept by tank. Nothing leaves it.

const UNITS = "mulmbook-units";
const KEPT = "mulmbook-kept";

export function chosenUnits() {
  return read(UNITS) === "us" ? "us" : "metric";
}

export function chooseUnits(units) {
  write(UNITS, units);
}

/** All kept calculations, oldest first: {id, tank, calculator, title, address, when, lines}. */
export function kept() {
  const list = read(KEPT);
  return Array.isArray(list) ? list.filter(isKept) : [];
}

/** Returns whether the device had room for it. */
export function keep(calculation) {
  const list = kept();
  list.push({ id: crypto.randomUUID(), when: new Date().toISOString(), ...calculation });
  navigator.storage?.persist?.();
  return write(KEPT, list);
}

export function replaceKept(list) {
  return write(KEPT, list.filter(isKept));
}

export function isKept(one) {
  const texts = ["id", "tank", "calculator", "title", "address", "when"];
  return Boolean(one) && texts.every((name) => typeof one[name] === "string") && Array.isArray(one.lines)
    && one.lines.every((line) => typeof line === "string") && /^[a-z-]*$/.test(one.calculator)
    && !Number.isNaN(Date.parse(one.when));
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
