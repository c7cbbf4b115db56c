// The keeper's tanks, their log, settings and kept calculations, to be read and written. Callers get copies and may
// change them. What writes takes an `action`, an id that the writings of one tap share: undo takes all of them back.

import { compareFile, fileOf, mergeFile } from "./exchange.js";
import { frontRow } from "./front.js";
import { isSame, plainFault } from "./item.js";
import { newId } from "./operations.js";
import { saveItem } from "./save.js";
import { CHOSEN, ROUND, settingRow, standingRow } from "./settings.js";
import { ShelfError } from "./shelf-error.js";
import { ShownShelf } from "./shelf-shown.js";
import { undoAction } from "./undo.js";
import { localDateTime } from "./when.js";

/** @typedef {import("./shelf-shown.js").Tank} Tank */
/** @typedef {import("./shelf-shown.js").Entry} Entry */
/** @typedef {{action?: string}} Tap */

export class Shelf extends ShownShelf {
  /** Settings that are being written, by name. */
  #underWay = new Map();

  /**
   * Save a new tank (no id) or what was changed in one; what another tab changed meanwhile stays.
   * @param {Tap} [tap]
   * @returns {Promise<Tank>}
   */
  async saveTank(tank, tap = {}) {
    return saveItem(this.inner, "tank", { ...tank, id: tank.id ?? newId() }, tank, tap.action);
  }

  /** @param {Tap} [tap] */
  async removeTank(id, tap = {}) {
    await this.#drop("tank", id, tap);
  }

  async orderTanks(ids) {
    await this.inner.write({ parts: [{ op: "order", values: { ids: [...ids] } }] }, { unsaved: ids });
  }

  /**
   * Log an entry; without a time it is now.
   * @param {Tap} [tap]
   * @returns {Promise<Entry>}
   */
  async log(entry, tap = {}) {
    const whole = { ...entry, id: entry.id ?? newId(), at: entry.at ?? localDateTime() };
    if (!this.shown().tanks.has(entry.tank)) throw new ShelfError("broken", "tank: this tank is not on the shelf any more", entry);
    return saveItem(this.inner, "entry", whole, entry, tap.action);
  }

  /**
   * Change some keys of an entry.
   * @param {Tap} [tap]
   * @returns {Promise<Entry>}
   */
  async edit(id, changes, tap = {}) {
    const before = this.shown().entries.find((one) => one.id === id);
    if (!before) throw new ShelfError("broken", "This entry is not in the log any more.", changes);
    return saveItem(this.inner, "entry", { ...before, ...changes, id }, changes, tap.action);
  }

  /**
   * Take an entry out of the log; undo brings it back.
   * @param {Tap} [tap]
   */
  async remove(id, tap = {}) {
    await this.#drop("entry", id, tap);
  }

  /**
   * Undo what was done in an action, or in the last one: what it was (`{op, of, tanks, entries}`), or null where there
   * is nothing to undo. What was done later stays.
   * @param {string} [action]
   */
  async undo(action) {
    return undoAction(this.inner, action);
  }

  async keepStanding(id, answer) {
    await this.inner.writeLocal(standingRow(id, answer), "answer");
  }

  async keepRound(answer) {
    await this.inner.writeLocal(settingRow(ROUND, answer), "answer");
  }

  /** Keep what the board shows of a log of so many operations, for its next opening, where it is not kept already. */
  async keepFront(cards, round) {
    const row = frontRow(cards, round);
    if (!isSame(row.value, this.local(row.name))) await this.inner.writeLocal(row, "answer");
  }

  async choose(id) {
    await this.inner.writeLocal({ name: CHOSEN, value: id }, "choice");
  }

  async saveSetting(name, value) {
    const fault = plainFault(value, name);
    if (fault) throw new ShelfError("broken", fault, value);
    await this.inner.writeLocal(settingRow(name, value));
  }

  /**
   * Change a setting by what it is, or is about to be: of two taps in quick succession the second is made of the first,
   * and neither waits for the other, since the page may be left at once.
   * @param {(before: any) => unknown} change
   */
  async changeSetting(name, change) {
    const value = change(this.#underWay.has(name) ? structuredClone(this.#underWay.get(name)) : this.settingNow(name));
    this.#underWay.set(name, value);
    try {
      await this.saveSetting(name, value);
    } finally {
      if (this.#underWay.get(name) === value) this.#underWay.delete(name);
    }
  }

  async keep(calculation) {
    return saveItem(this.inner, "kept", { when: new Date().toISOString(), ...calculation, id: calculation.id ?? newId() }, calculation);
  }

  /** @param {Tap} [tap] */
  async unkeep(id, tap = {}) {
    await this.#drop("kept", id, tap);
  }

  /** The whole shelf as the contract's file, with kept calculations and settings beside it. */
  toFile() {
    return fileOf(this.inner);
  }

  /** What a file would change; nothing is changed. The counts are those of difference.js. */
  compare(file) {
    return compareFile(this.inner, file);
  }

  /**
   * Take in what a file holds, whole or not at all; undo takes its tanks and entries back. Returns what `compare` returned.
   * What was changed here after the file was saved stays. With `returned: false` what was removed here stays away.
   * @param {Tap & {returned?: boolean}} [how]
   */
  async merge(file, how = {}) {
    return mergeFile(this.inner, file, how.returned ?? true, how.action);
  }

  /** @param {Tap} tap */
  async #drop(of, key, tap) {
    await this.inner.write({ parts: [{ op: "drop", of, key }] }, { unsaved: key, action: tap.action });
  }
}
