// Names to choose from, fetched when such a field is first entered: {rows: [values by key], names: {name: row}}.
// A name that is chosen fills in its row.

import { entryOf } from "./form.js";
import { element } from "./paint.js";

export function openSuggestions(form, changed) {
  form.addEventListener("focusin", ({ target }) => target.dataset.suggest && offer(form, target));
  form.addEventListener("input", ({ target }) => target.dataset.suggest && take(target, changed));
}

const lists = new Map(); // one fetch for each list of names

function listOf(names) {
  if (!lists.has(names)) {
    lists.set(names, fetch(new URL(`suggest/${names}.json`, import.meta.url)).then((reply) => reply.json()));
    lists.get(names).catch(() => lists.delete(names)); // offered again at the next try
  }
  return lists.get(names);
}

async function offer(form, entry) {
  const id = `suggest-${entry.dataset.suggest}`;
  const { names } = await listOf(entry.dataset.suggest).catch(() => ({ names: {} }));
  if (!form.querySelector(`#${id}`)) {
    form.append(element("datalist", { id }, ...Object.keys(names).map((value) => element("option", { value }))));
  }
  entry.setAttribute("list", id);
}

/** Fill in what goes with a name; what went with another name goes with it, so that it cannot pass for this one's. */
async function take(entry, changed) {
  const { rows, names } = await listOf(entry.dataset.suggest).catch(() => ({ names: {} }));
  const values = rows?.[names[nameIn(names, entry.value)]];
  const row = entry.closest(".row");
  const fields = [...row.querySelectorAll(":scope > [data-key]")].filter((field) => !field.matches("fieldset"));
  let moved = false;
  for (const field of fields) {
    const place = entryOf(field);
    const value = values?.[field.dataset.key] ?? (place.dataset.filled === place.value && place.value ? "" : undefined);
    if (value === undefined) continue;
    if (value === "" && place.matches("select")) place.selectedIndex = 0;
    else place.value = value;
    place.dataset.filled = place.value;
    moved = true;
  }
  if (moved) changed();
}

function nameIn(names, text) {
  const plain = text.trim().toLowerCase();
  return Object.hasOwn(names, text) ? text : Object.keys(names).find((name) => name.toLowerCase() === plain);
}
