// What the shelf shows, derived from the log. Nothing here is stored.

import { faultOf } from "./item.js";
import { inOrder, momentOf, stateOf, timeOf } from "./operations.js";

const LOST_NAME = "Tank without its record";

export class View {
  constructor(operations = []) {
    this.rebuild(operations);
  }

  /** Derive everything anew. Whatever is broken or newer is left out and counted, and stays in the log. */
  rebuild(operations) {
    this.operations = [];
    this.ids = new Set(operations.map((one) => one?.id));
    this.counts = { broken: 0, newer: 0 };
    this.items = { tank: new Map(), entry: new Map(), kept: new Map() };
    this.order = [];
    this.last = 0;
    const good = operations.filter((one) => this.#isGood(one)).sort(inOrder);
    this.undone = new Set(good.filter((one) => one.op === "undo").map((one) => one.undoes));
    for (const one of good) this.#apply(one);
    this.all = operations;
    this.changed();
  }

  #isGood(one) {
    const state = stateOf(one);
    if (state !== "good") this.counts[state] += 1;
    return state === "good";
  }

  /** Add operations; those that come in order need no new derivation. */
  take(operations) {
    const fresh = operations.filter((one) => !this.ids.has(one?.id)).sort(inOrder);
    const simple = fresh.every((one) => stateOf(one) === "good" && momentOf(one) >= this.last && (one.op !== "undo" || this.#isOfItems(one)));
    if (!simple) return this.rebuild([...this.all, ...fresh]);
    for (const one of fresh) {
      this.all.push(one);
      this.ids.add(one.id);
      this.#apply(one);
      if (one.op === "undo") this.#takeBack(one.undoes);
    }
    return this.changed();
  }

  /** Whether what is undone touched items alone, which can be derived one by one. */
  #isOfItems({ undoes }) {
    return this.operations.every((one) => one.action !== undoes || (one.op !== "order" && one.op !== "undo"));
  }

  /** Derive anew what an action touched, each item in its place. */
  #takeBack(action) {
    this.undone.add(action);
    for (const { op, of, key } of this.operations.filter((one) => one.action === action)) {
      const kind = op === "drop" ? of : op;
      const alone = new Map();
      for (const one of this.operations) if (one.key === key && (one.op === kind || one.of === kind)) applyTo(alone, one, this.undone.has(one.action));
      this.items[kind].set(key, alone.get(key));
    }
  }

  #apply(one) {
    this.operations.push(one);
    this.last = Math.max(this.last, momentOf(one));
    if (one.op === "undo" || (this.undone.has(one.action) && one.op === "order")) return;
    if (one.op === "order") this.order = one.values.ids;
    else applyTo(this.items[one.op === "drop" ? one.of : one.op], one, this.undone.has(one.action));
  }

  /** Forget the lists made from the items. */
  changed() {
    this.lists = null;
  }

  /** The tanks, entries and kept calculations that can be shown, and how many cannot. */
  shown() {
    this.lists ??= listsOf(this.items, this.order);
    return this.lists;
  }

  /** An item as it was at a time (date-time), from its operations until then. */
  asOf(of, key, at) {
    const items = new Map();
    const until = timeOf(at);
    for (const one of this.operations) {
      if (one.key === key && (one.op === of || one.of === of) && momentOf(one) <= until && !this.undone.has(one.action)) applyTo(items, one, false);
    }
    return items.get(key)?.value ?? null;
  }
}

/** One operation upon the items of its kind: `{value, dropped}` by id. One that was undone only leaves the id known. */
function applyTo(items, { op, key, values, whole, at }, isUndone) {
  const before = items.get(key);
  if (isUndone) {
    if (!before) items.set(key, { value: null, dropped: true });
  } else if (op === "drop") items.set(key, { value: before?.value ?? null, dropped: true });
  else items.set(key, { value: { ...(whole ? {} : before?.value), ...values, id: key, changed: at }, dropped: !whole && Boolean(before?.dropped) });
}

function listsOf(items, order) {
  const tanks = new Map(good("tank", items).map((tank) => [tank.id, tank]));
  const entries = good("entry", items).filter((entry) => !items.tank.get(entry.tank)?.dropped);
  const orphans = new Set(entries.map((entry) => entry.tank).filter((id) => !tanks.has(id)));
  for (const id of orphans) tanks.set(id, { id, name: LOST_NAME });
  byTime(entries);
  return {
    tanks: inWalkingOrder(tanks, order),
    entries,
    ofTank: byTank(entries),
    kept: byTime(good("kept", items)),
    orphans: orphans.size,
    incomplete: ["tank", "entry", "kept"].reduce((sum, of) => sum + standing(items[of]).length - good(of, items).length, 0),
  };
}

/** The entries of each tank, in the same order. @returns {Map<string, any[]>} */
function byTank(entries) {
  const found = new Map();
  for (const one of entries) {
    if (found.has(one.tank)) found.get(one.tank).push(one);
    else found.set(one.tank, [one]);
  }
  return found;
}

function standing(items) {
  return [...items.values()].filter((one) => !one.dropped && one.value).map(({ value }) => value);
}

function good(of, items) {
  return standing(items[of]).filter((value) => !judged(of, value).fault);
}

function byTime(list) {
  return list.sort((one, other) => judgements.get(one).time - judgements.get(other).time);
}

const judgements = new WeakMap(); // a value never changes: each operation makes a new one

function judged(of, value) {
  if (!judgements.has(value)) judgements.set(value, { fault: faultOf(of, value), time: timeOf(value.at ?? value.when) });
  return judgements.get(value);
}

function inWalkingOrder(tanks, order) {
  const known = order.filter((id) => tanks.has(id));
  return new Map([...new Set([...known, ...tanks.keys()])].map((id) => [id, tanks.get(id)]));
}
