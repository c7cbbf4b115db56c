// What every part of the shelf begins with: the store, opened once, and the tables that the build made.

export { day, dayInWords } from "./day.js";

let opening;
const files = new Map();

/** The shelf of this device; opened at the first call. */
export function shelf() {
  opening ??= import("./store.js").then(({ openShelf }) => openShelf());
  opening.catch(() => { opening = undefined; }); // so that another try opens it afresh
  return opening;
}

/** A table beside these scripts, fetched once: fields.json says what a tank and its log hold. */
export function table(name) {
  if (!files.has(name)) {
    files.set(name, fetch(new URL(`${name}.json`, import.meta.url)).then((reply) => reply.json()));
    files.get(name).catch(() => files.delete(name));
  }
  return files.get(name);
}

/** The tank that the keeper stands at, or null. */
export async function tankHere() {
  const store = await shelf();
  const id = await store.chosen();
  return id ? ((await store.tank(id)) ?? null) : null;
}

/** A tank's name as a page says it: a demo tank never without that word. */
export function called(tank) {
  return tank.demo ? `${tank.name} (demo)` : tank.name;
}

/** Hear of another fragment of the address while the page stands. */
export function onHash(box, paint) {
  const turned = () => (box.isConnected ? paint() : removeEventListener("hashchange", turned));
  addEventListener("hashchange", turned);
}

/** Say why the store would not do something; anything else is a fault and goes on. */
export function said(place, wrong) {
  if (wrong?.name !== "ShelfError" && !wrong?.reason) throw wrong;
  place.textContent = wrong.message;
}
