// What the shelf shows: tanks, their log, kept calculations, and what belongs to this device. Nothing here is written.

import { timeOf } from "./operations.js";
import { readable } from "./readable-setting.js";
import { CHOSEN, settingRow, standingRow } from "./settings.js";
import { troublesOf } from "./troubles.js";

/** @typedef {{id: string, name: string, changed?: string, [key: string]: any}} Tank the contract's tank */
/** @typedef {{id: string, tank: string, at: string, kind: string, [key: string]: any}} Entry the contract's entry */

export class ShownShelf {
  /**
   * @param {import("./log.js").Log} inner
   * @param {import("./shelf-error.js").ShelfError | null} trouble why nothing is stored on this device, where that is so
   */
  constructor(inner, trouble) {
    /** @protected */
    this.inner = inner;
    this.trouble = trouble;
    /** Whether what is saved outlives the page. */
    this.durable = !trouble;
  }

  /** Sentences on what could not be stored or read; none where all is well. */
  troubles() {
    return troublesOf(this.inner, this.trouble);
  }

  /** Old values that could not be read: {id, from, text, at}. They are kept as they were. */
  setAside() {
    return structuredClone(this.inner.aside);
  }

  /** All tanks, in walking order. @returns {Promise<Tank[]>} */
  async tanks() {
    return structuredClone([...this.shown().tanks.values()]);
  }

  /** @returns {Promise<Tank | null>} */
  async tank(id) {
    return structuredClone(this.shown().tanks.get(id) ?? null);
  }

  /**
   * Entries, oldest first: all, of one tank, of one kind, since a date-time.
   * @param {{tank?: string, since?: string, kind?: string}} [wanted]
   * @returns {Promise<Entry[]>}
   */
  async entries({ tank, since, kind } = {}) {
    const all = this.#entriesOf(tank).filter((one) => !kind || one.kind === kind);
    if (since === undefined) return structuredClone(all);
    const from = timeOf(since);
    return structuredClone(all.filter((one) => timeOf(one.at) >= from));
  }

  /** Whether a tank or its log was changed after a moment (UTC, as `changed` has it). */
  async changedSince(id, moment) {
    return [this.shown().tanks.get(id), ...this.#entriesOf(id)].some((one) => one?.changed > moment);
  }

  /** The last values of a kind, each once, the latest first. @returns {Promise<number[]>} */
  async lastValues(tank, kind, what, count = 5) {
    const fits = (one) => one.kind === kind && (!what || one.what === what) && typeof one.value === "number";
    const values = this.#entriesOf(tank).filter(fits).map((one) => one.value).reverse();
    return [...new Set(values)].slice(0, count);
  }

  /** The last standing that was kept with a tank, or null. */
  async standing(id) {
    return this.local(standingRow(id, null).name);
  }

  /** The tank that the keeper stands at. @returns {Promise<string | null>} */
  async chosen() {
    const id = this.local(CHOSEN);
    return this.shown().tanks.has(id) ? id : null;
  }

  async setting(name) {
    return this.settingNow(name);
  }

  /** @protected */
  settingNow(name) {
    return readable(name, this.local(settingRow(name, null).name));
  }

  /** Calculations kept by tank, oldest first: {id, tank, calculator, title, address, when, lines}, and page where it is no calculator's. */
  async kept() {
    return structuredClone(this.shown().kept);
  }

  /** When the first and the last operation were written (ms); null and 0 where there is none. */
  written() {
    const { operations, last } = this.inner.view;
    return { first: operations.length ? timeOf(operations[0].at) : null, last };
  }

  /** How many operations the log has, those that cannot be shown among them. */
  operations() {
    return this.inner.view.all.length;
  }

  /** Hear of every change, here or in another tab: `{from: "here" | "elsewhere", only}`; `only` is "answer" or "choice" where no tank and no entry changed. Returns a function that ends it. */
  onChange(listener) {
    return this.inner.onChange(listener);
  }

  /** The entries of a tank, or all; no copies. */
  #entriesOf(tank) {
    const { entries, ofTank } = this.shown();
    return tank ? (ofTank.get(tank) ?? []) : entries;
  }

  /** @protected */
  local(name) {
    return structuredClone(this.inner.local.get(name) ?? null);
  }

  /** @protected */
  shown() {
    return this.inner.view.shown();
  }
}
