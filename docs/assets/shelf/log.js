// The log as one tab holds it: written first, then shown; news from other tabs taken in.

import { frontAfter } from "./front.js";
import { shelfError } from "./shelf-error.js";
import { stamped } from "./operations.js";
import { FRONT } from "./settings.js";
import { onReturn, Tabs } from "./tabs.js";
import { View } from "./view.js";

export class Log {
  #listeners = new Set();

  /** @param {import("./database.js").Database | import("./memory.js").Memory} place */
  constructor(place) {
    this.place = place;
    this.view = new View();
    this.local = new Map();
    this.aside = [];
    /** Why what an older version kept could not be moved here, where that is so. */
    this.notMoved = null;
    this.tabs = new Tabs((news) => this.#hear(news));
    onReturn(() => this.#look());
  }

  async readAll() {
    const { operations, local, aside } = await this.place.readAll();
    this.view.rebuild(operations);
    this.#takeLocal(local);
    this.aside = aside;
  }

  /**
   * Write the operations of one tap, and values beside them; the view changes only once they lie safely.
   * @param {{parts?: object[], local?: {name: string, value: unknown}[]}} written
   * @param {object} how
   * @param {unknown} how.unsaved what the error carries where nothing could be written
   * @param {string} [how.action] the tap that they are of; a new one where none is said
   * @param {"answer" | "choice"} [how.only] whether this only keeps an answer that was made from what stands here, or a choice
   */
  async write({ parts = [], local = [] }, { unsaved, action, only }) {
    if (!parts.length && !local.length) return;
    const operations = stamped(parts, this.view.last, action);
    const beside = [...local, ...(operations.length ? frontAfter(this.local.get(FRONT), operations) : [])];
    await this.#put({ operations, local: beside }, unsaved);
    this.view.take(operations);
    for (const { name, value } of beside) this.local.set(name, value);
    this.tabs.tell({ operations: operations.map((one) => one.id), local: local.length > 0 });
    this.#call("here", only);
  }

  /**
   * Write a value that is no tank's.
   * @param {{name: string, value: unknown}} row
   * @param {"answer" | "choice"} [only]
   */
  async writeLocal(row, only = undefined) {
    await this.write({ local: [structuredClone(row)] }, { unsaved: row.value, only });
  }

  async #put(batch, unsaved) {
    try {
      await this.place.write(batch);
    } catch (refusal) {
      throw shelfError(refusal, unsaved);
    }
  }

  onChange(listener) {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  #call(from, only = undefined) {
    // Later, so that what a listener throws cannot make a write look as if it had failed.
    for (const listener of this.#listeners) queueMicrotask(() => listener({ from, only }));
  }

  /**
   * Take in what another tab wrote; what cannot be read now is read on the next look.
   * @param {{operations?: string[], local?: boolean}} news
   */
  async #hear({ operations, local }) {
    try {
      if (operations?.length) this.view.take(await this.place.readOperations(operations));
      if (local) this.#takeLocal(await this.place.readLocal());
    } catch {
      return;
    }
    this.#call("elsewhere");
  }

  /** Read everything again where the log has grown or shrunk without a word. */
  async #look() {
    try {
      if ((await this.place.count()) === this.view.all.length) return;
      await this.readAll();
    } catch {
      return;
    }
    this.#call("elsewhere");
  }

  /** The database was closed under us: read again what is there now. */
  lookAgain() {
    return this.#look();
  }

  #takeLocal(rows) {
    this.local = new Map(rows.filter((row) => typeof row?.name === "string").map((row) => [row.name, row.value]));
  }
}
