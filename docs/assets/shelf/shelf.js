// The keeper's tanks, their log, settings and kept calculations. Callers get copies and may change them.

import { compareFile, fileOf, mergeFile } from "./exchange.js";
import { plainFault } from "./item.js";
import { newId, timeOf } from "./operations.js";
import { saveItem } from "./save.js";
import { CHOSEN, settingRow, standingRow } from "./settings.js";
import { ShelfError } from "./shelf-error.js";
import { troublesOf } from "./troubles.js";
import { undoLast } from "./undo.js";
import { localDateTime } from "./when.js";

/** @typedef {{id: string, name: string, changed?: string, [key: string]: any}} Tank the contract's tank */
/** @typedef {{id: string, tank: string, at: string, kind: string, [key: string]: any}} Entry the contract's entry */

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
    return saveItem(this.#log, "tank", { ...tank, id: tank.id ?? newId() }, tank);
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
    return saveItem(this.#log, "entry", whole, entry);
  }

  /** Change some keys of an entry. @returns {Promise<Entry>} */
  async edit(id, changes) {
    const before = this.#shown().entries.find((one) => one.id === id);
    if (!before) throw new ShelfError("broken", "This entry is not in the log any more.", changes);
    return saveItem(this.#log, "entry", { ...before, ...changes, id }, changes);
  }

  /** Take an entry out of the log; undo brings it back. */
  async remove(id) {
    await this.#log.write([{ op: "drop", of: "entry", key: id }], id);
  }

  /** Undo the last tap: what it was (`{op, of, tanks, entries}`), or null where there is nothing to undo. */
  async undo() {
    return undoLast(this.#log);
  }

  /** The last values of a kind, each once, the latest first. @returns {Promise<number[]>} */
  async lastValues(tank, kind, what, count = 5) {
    const fits = (one) => one.tank === tank && one.kind === kind && (!what || one.what === what) && typeof one.value === "number";
    const values = this.#shown().entries.filter(fits).map((one) => one.value).reverse();
    return [...new Set(values)].slice(0, count);
  }

  /** The last standing that was kept with a tank, or null. */
  async standing(id) {
    return this.#local(standingRow(id, null).name);
  }

  async keepStanding(id, answer) {
    await this.#log.writeLocal(standingRow(id, answer));
  }

  /** The tank that the keeper stands at. @returns {Promise<string | null>} */
  async chosen() {
    const id = this.#local(CHOSEN);
    return this.#shown().tanks.has(id) ? id : null;
  }

  async choose(id) {
    await this.#log.writeLocal({ name: CHOSEN, value: id });
  }

  async setting(name) {
    return this.#local(settingRow(name, null).name);
  }

  async saveSetting(name, value) {
    const fault = plainFault(value, name);
    if (fault) throw new ShelfError("broken", fault, value);
    await this.#log.writeLocal(settingRow(name, value));
  }

  /** Calculations kept by tank, oldest first: {id, tank, calculator, title, address, when, lines}, and page where it is no calculator's. */
  async kept() {
    return structuredClone(this.#shown().kept);
  }

  async keep(calculation) {
    return saveItem(this.#log, "kept", { when: new Date().toISOString(), ...calculation, id: calculation.id ?? newId() }, calculation);
  }

  async unkeep(id) {
    await this.#log.write([{ op: "drop", of: "kept", key: id }], id);
  }

  /** The whole shelf as the contract's file, with kept calculations and settings beside it. */
  toFile() {
    return fileOf(this.#log);
  }

  /** What a file would change; nothing is changed. The counts are those of difference.js. */
  compare(file) {
    return compareFile(this.#log, file);
  }

  /**
   * Take in what a file holds, whole or not at all; undo takes its tanks and entries back. Returns what `compare` returned.
   * What was changed here after the file was saved stays. With `returned: false` what was removed here stays away.
   */
  async merge(file, { returned = true } = {}) {
    return mergeFile(this.#log, file, returned);
  }

  /** When the first and the last operation were written (ms); null and 0 where there is none. */
  written() {
    const { operations, last } = this.#log.view;
    return { first: operations.length ? timeOf(operations[0].at) : null, last };
  }

  /** Hear of every change, here or in another tab: `{from: "here" | "elsewhere"}`. Returns a function that ends it. */
  onChange(listener) {
    return this.#log.onChange(listener);
  }

  #local(name) {
    return structuredClone(this.#log.local.get(name) ?? null);
  }

  #shown() {
    return this.#log.view.shown();
  }
}
