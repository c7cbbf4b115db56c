// The keeper's tanks, their log, settings and kept calculations. Callers get copies and may change them.

import { compared, mergeParts } from "./difference.js";
import { faultOf, isSame, plainFault } from "./item.js";
import { MOVED, newId, timeOf } from "./operations.js";
import { ShelfError } from "./shelf-error.js";
import { troublesOf } from "./troubles.js";
import { localDateTime } from "./when.js";

/** @typedef {{id: string, name: string, changed?: string, [key: string]: any}} Tank the contract's tank */
/** @typedef {{id: string, tank: string, at: string, kind: string, [key: string]: any}} Entry the contract's entry */

const SETTING = "setting ";
const STANDING = "standing ";
const CHOSEN = "chosen";

export class Shelf {
  #log;

  /**
   * @param {import("./log.js").Log} log
   * @param {ShelfError | null} trouble why nothing is stored on this device, where that is so
   */
  constructor(log, trouble) {
    this.#log = log;
    this.trouble = trouble;
    /** Whether what is saved outlives the page. */
    this.durable = !trouble;
  }

  /** Sentences on what could not be stored or read; none where all is well. */
  troubles() {
    return troublesOf(this.#log, this.trouble);
  }

  /** Old values that could not be read: {id, from, text, at}. They are kept as they were. */
  setAside() {
    return structuredClone(this.#log.aside);
  }

  /** All tanks, in walking order. @returns {Promise<Tank[]>} */
  async tanks() {
    return structuredClone([...this.#shown().tanks.values()]);
  }

  /** @returns {Promise<Tank | null>} */
  async tank(id) {
    return structuredClone(this.#shown().tanks.get(id) ?? null);
  }

  /**
   * Save a new tank (no id) or what was changed in one; what another tab changed meanwhile stays.
   * @returns {Promise<Tank>}
   */
  async saveTank(tank) {
    return this.#save("tank", { ...tank, id: tank.id ?? newId() }, tank);
  }

  async removeTank(id) {
    await this.#log.write([{ op: "drop", of: "tank", key: id }], id);
  }

  async orderTanks(ids) {
    await this.#log.write([{ op: "order", values: { ids: [...ids] } }], ids);
  }

  /**
   * Entries, oldest first: all, of one tank, of one kind, since a date-time.
   * @param {{tank?: string, since?: string, kind?: string}} [wanted]
   * @returns {Promise<Entry[]>}
   */
  async entries({ tank, since, kind } = {}) {
    const from = since === undefined ? -Infinity : timeOf(since);
    return structuredClone(this.#shown().entries.filter((one) => (!tank || one.tank === tank) && (!kind || one.kind === kind) && timeOf(one.at) >= from));
  }

  /** Log an entry; without a time it is now. @returns {Promise<Entry>} */
  async log(entry) {
    const whole = { ...entry, id: entry.id ?? newId(), at: entry.at ?? localDateTime() };
    if (!this.#shown().tanks.has(entry.tank)) throw new ShelfError("broken", "tank: this tank is not on the shelf any more", entry);
    return this.#save("entry", whole, entry);
  }

  /** Change some keys of an entry. @returns {Promise<Entry>} */
  async edit(id, changes) {
    const before = this.#shown().entries.find((one) => one.id === id);
    if (!before) throw new ShelfError("broken", "This entry is not in the log any more.", changes);
    return this.#save("entry", { ...before, ...changes, id }, changes);
  }

  /** Take an entry out of the log; undo brings it back. */
  async remove(id) {
    await this.#log.write([{ op: "drop", of: "entry", key: id }], id);
  }

  /**
   * Undo the last tap that is not undone yet.
   * @returns {Promise<{op: string, of: string, tanks: Tank[], entries: Entry[]} | null>} what it was, or null where there is nothing
   */
  async undo() {
    const { operations, undone } = this.#log.view;
    const last = operations.findLast((one) => one.op !== "undo" && one.action !== MOVED && !undone.has(one.action));
    if (!last) return null;
    const parts = operations.filter((one) => one.action === last.action);
    await this.#log.write([{ op: "undo", undoes: last.action }], null);
    return structuredClone({ op: last.op, of: last.of ?? last.op, ...this.#touched(parts) });
  }

  #touched(parts) {
    const touched = (of) => parts.filter((one) => one.op === of || one.of === of).map((one) => this.#log.view.items[of].get(one.key)?.value ?? { ...one.values, id: one.key });
    return { tanks: touched("tank"), entries: touched("entry") };
  }

  /** The last values of a kind, each once, the latest first. @returns {Promise<number[]>} */
  async lastValues(tank, kind, what, count = 5) {
    const fits = (one) => one.tank === tank && one.kind === kind && (!what || one.what === what) && typeof one.value === "number";
    const values = this.#shown().entries.filter(fits).map((one) => one.value).reverse();
    return [...new Set(values)].slice(0, count);
  }

  /** The last standing that was kept with a tank, or null. */
  async standing(id) {
    return structuredClone(this.#log.local.get(STANDING + id) ?? null);
  }

  async keepStanding(id, answer) {
    await this.#log.writeLocal(STANDING + id, answer);
  }

  /** The tank that the keeper stands at. @returns {Promise<string | null>} */
  async chosen() {
    const id = this.#log.local.get(CHOSEN);
    return this.#shown().tanks.has(id) ? id : null;
  }

  async choose(id) {
    await this.#log.writeLocal(CHOSEN, id);
  }

  async setting(name) {
    return structuredClone(this.#log.local.get(SETTING + name) ?? null);
  }

  async saveSetting(name, value) {
    const fault = plainFault(value, name);
    if (fault) throw new ShelfError("broken", fault, value);
    await this.#log.writeLocal(SETTING + name, value);
  }

  /** Calculations kept by tank, oldest first: {id, tank, calculator, title, address, when, lines}, and page where it is no calculator's. */
  async kept() {
    return structuredClone(this.#shown().kept);
  }

  async keep(calculation) {
    return this.#save("kept", { when: new Date().toISOString(), ...calculation, id: calculation.id ?? newId() }, calculation);
  }

  async unkeep(id) {
    await this.#log.write([{ op: "drop", of: "kept", key: id }], id);
  }

  /** The whole shelf as the contract's file, with kept calculations and settings beside it. */
  toFile() {
    const { tanks, entries, kept } = this.#shown();
    const file = { format: "mulmbook-tanks", version: 1, saved: new Date().toISOString(), tanks: [...tanks.values()], entries, kept, settings: this.#settings() };
    return structuredClone(file);
  }

  /** What a file would change; nothing is changed. See difference.js for the counts. */
  compare(file) {
    return compared(file, this.#log.view, this.#settings());
  }

  /**
   * Take in what a file holds, whole or not at all; undo takes all of it back. Returns what `compare` returned.
   * What was changed here after the file was saved stays. With `returned: false` what was removed here stays away.
   */
  async merge(file, { returned = true } = {}) {
    const difference = this.compare(file);
    const { parts, settings } = mergeParts(file, this.#log.view, this.#settings(), returned);
    await this.#log.write(parts, file);
    for (const [name, value] of settings) await this.saveSetting(name, value);
    return difference;
  }

  /** Hear of every change, here or in another tab: `{from: "here" | "elsewhere"}`. Returns a function that ends it. */
  onChange(listener) {
    return this.#log.onChange(listener);
  }

  #shown() {
    return this.#log.view.shown();
  }

  #settings() {
    return Object.fromEntries([...this.#log.local].filter(([name]) => name.startsWith(SETTING)).map(([name, value]) => [name.slice(SETTING.length), value]));
  }

  /** Write the keys of an item that differ from what the caller had read. */
  async #save(of, item, unsaved) {
    const fault = faultOf(of, item);
    if (fault) throw new ShelfError("broken", fault, unsaved);
    const { id, changed, ...values } = item;
    const known = this.#log.view.items[of].get(id);
    const before = known && !known.dropped && ((changed && this.#log.view.asOf(of, id, changed)) ?? known.value);
    const part = before ? { op: of, key: id, values: differing(values, before) } : { op: of, key: id, values, whole: true };
    if (Object.keys(part.values).length) await this.#log.write([part], unsaved);
    return structuredClone(this.#log.view.items[of].get(id).value);
  }
}

/** The keys that differ; one that is gone is set to null. */
function differing(values, { id, changed, ...before }) {
  const keys = new Set([...Object.keys(values), ...Object.keys(before)]);
  return Object.fromEntries([...keys].filter((key) => !isSame(values[key], before[key])).map((key) => [key, values[key] ?? null]));
}
