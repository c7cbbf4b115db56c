// The shelf's place on this device: an IndexedDB of three stores, opened again whenever it was closed under us.

import { openDB } from "idb";

export const NAME = "mulmbook-shelf";
export const SCHEMA = 1;
const STORES = ["operations", "local", "aside"];

/**
 * @typedef {object} Batch What one transaction writes, whole or not at all.
 * @property {object[]} [operations] operations to add to the log
 * @property {boolean} [onlyNew] leave out operations whose id is in the log already
 * @property {{name: string, value: unknown}[]} [local] values that belong to this device alone
 * @property {object[]} [aside] old values that could not be read
 */

export class Database {
  #opening = null;

  /** @param {() => void} lost hears that the connection was closed by a newer version, a deletion or the browser */
  constructor(lost) {
    this.lost = lost;
  }

  /** @returns {Promise<import("idb").IDBPDatabase<any>>} */
  open() {
    this.#opening ??= this.#opened();
    return this.#opening;
  }

  async #opened() {
    try {
      return await openDB(NAME, SCHEMA, {
        upgrade: (database, before) => {
          if (before < 1) makeStores(database);
        },
        blocking: (_now, _wanted, event) => this.#letGo(/** @type {IDBDatabase} */ (event.target)),
        terminated: () => this.#letGo(null),
      });
    } catch (refusal) {
      this.#opening = null;
      throw refusal;
    }
  }

  #letGo(connection) {
    connection?.close();
    this.#opening = null;
    this.lost();
  }

  /** The whole log and what lies beside it. */
  async readAll() {
    const work = await this.#begin("readonly");
    const [operations, local, aside] = await Promise.all(STORES.map((name) => work.objectStore(name).getAll()));
    return { operations, local, aside };
  }

  /** A value of this device, and how many operations the log has, as they are at one moment. */
  async readFront(name) {
    const work = await this.#begin("readonly");
    const [row, operations] = await Promise.all([work.objectStore("local").get(name), work.objectStore("operations").count()]);
    return { value: row?.value ?? null, operations };
  }

  /** Let the connection go; nothing hears of it. */
  async close() {
    (await this.#opening?.catch(() => null))?.close();
    this.#opening = null;
  }

  /** The operations of these ids, those that are there. */
  async readOperations(ids) {
    const work = await this.#begin("readonly");
    const found = await Promise.all(ids.map((id) => work.objectStore("operations").get(id)));
    return found.filter((one) => one !== undefined);
  }

  async readLocal() {
    return (await this.#begin("readonly")).objectStore("local").getAll();
  }

  async count() {
    return (await this.#begin("readonly")).objectStore("operations").count();
  }

  /** @param {Batch} batch */
  async write(batch) {
    const work = await this.#begin("readwrite");
    try {
      const operations = batch.onlyNew ? await missing(work.objectStore("operations"), batch.operations) : batch.operations;
      // A request that fails ends the transaction, whose own error says why.
      const ignore = () => {};
      for (const one of operations ?? []) work.objectStore("operations").add(one).catch(ignore);
      for (const one of batch.local ?? []) work.objectStore("local").put(one).catch(ignore);
      for (const one of batch.aside ?? []) work.objectStore("aside").put(one).catch(ignore);
    } catch (refusal) {
      work.done.catch(() => {});
      work.abort();
      throw refusal;
    }
    work.commit?.(); // an old browser waits for the page, which may be gone before it hears that the requests are done
    await work.done;
  }

  async #begin(mode) {
    try {
      return (await this.open()).transaction(STORES, mode, { durability: "strict" });
    } catch (refusal) {
      if (refusal.name !== "InvalidStateError") throw refusal;
      this.#opening = null; // the browser closed it a moment ago
      return (await this.open()).transaction(STORES, mode, { durability: "strict" });
    }
  }
}

function makeStores(database) {
  database.createObjectStore("operations", { keyPath: "id" });
  database.createObjectStore("local", { keyPath: "name" });
  database.createObjectStore("aside", { keyPath: "id" });
}

async function missing(store, operations) {
  const there = await Promise.all(operations.map((one) => store.getKey(one.id)));
  return operations.filter((_, index) => there[index] === undefined);
}
