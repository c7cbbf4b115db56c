// Calculations kept from the book's forms, under the tank that they were kept for.

import { element } from "../paint.js";
import { newId } from "./operations.js";
import { saidBelow } from "./sheet.js";

const LINES_SHOWN = 4;
const MOST_OPEN = 3; // calculations; more are folded by tank

/** Paint what is kept into a part of the page, of one tank or by tank; the part is hidden where there is none. */
export async function paintKept(part, store, root, tank) {
  const all = await store.kept();
  const wanted = tank ? all.filter((one) => one.tank === tank.name) : all;
  const names = [...new Set(wanted.map((one) => one.tank))];
  const cards = (name) => wanted.filter((one) => one.tank === name).toReversed().map((one) => card(part, store, root, one, tank));
  const groups = names.map((name) => (tank ? cards(name) : [element("details", { className: "fold", open: wanted.length <= MOST_OPEN }, element("summary", { textContent: `${name} (${wanted.filter((one) => one.tank === name).length})` }), ...cards(name))]));
  part.querySelector("#kept").replaceChildren(...groups.flat());
  part.hidden = !wanted.length;
}

function card(part, store, root, one, tank) {
  const page = one.page ?? `calculators/${one.calculator}/`;
  const link = element("a", { href: new URL(page + one.address, root).href, textContent: one.title });
  const when = new Date(one.when).toLocaleString(undefined, { dateStyle: "medium", timeStyle: "short" });
  const remove = element("button", { type: "button", textContent: "Remove" });
  remove.onclick = async () => {
    const action = newId();
    await store.unkeep(one.id, { action });
    await paintKept(part, store, root, tank);
    saidBelow(`${one.title} removed.`, async () => {
      await store.undo(action);
      await paintKept(part, store, root, tank);
    });
  };
  return element("div", { className: "kept" }, element("p", {}, element("b", {}, link), ` ${when}`), ...one.lines.slice(0, LINES_SHOWN).map((text) => element("p", { textContent: text })), remove);
}
