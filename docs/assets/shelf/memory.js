// Where this browser stores nothing: the same as the database, until the page is closed.

export class Memory {
  #operations = new Map();
  #local = new Map();
  #aside = [];

  /** @param {Error | null} refusal what every write ends with, where nothing may be written */
  constructor(refusal = null) {
    this.refusal = refusal;
  }

  async readAll() {
    return { operations: [...this.#operations.values()], local: await this.readLocal(), aside: [...this.#aside] };
  }

  async readOperations(ids) {
    return ids.filter((id) => this.#operations.has(id)).map((id) => this.#operations.get(id));
  }

  async readLocal() {
    return [...this.#local.values()];
  }

  async count() {
    return this.#operations.size;
  }

  /** @param {import("./database.js").Batch} batch */
  async write({ operations = [], local = [], aside = [] }) {
    if (this.refusal) throw this.refusal;
    const copies = structuredClone({ operations, local, aside }); // refuses before anything is changed, as the database does
    for (const one of copies.operations) this.#operations.set(/** @type {any} */ (one).id, one);
    for (const one of copies.local) this.#local.set(one.name, one);
    this.#aside.push(...copies.aside);
  }
}
