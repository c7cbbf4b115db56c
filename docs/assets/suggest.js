// Names to choose from, fetched when such a field is first entered: {rows: [values by key], names: {name: row}}.
// A name that is chosen fills in its row.

import { entryOf } from "./form.js";
import { element } from "./paint.js";

export function openSuggestions(form, changed) {
  form.addEventListener("focusin", ({ target }) => target.dataset.suggest && offer(form, target));
  form.addEventListener("input", ({ target }) => target.dataset.suggest && take(form, target, changed));
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

async function take(form, entry, changed) {
  const { rows, names } = await listOf(entry.dataset.suggest).catch(() => ({ names: {} }));
  const values = rows?.[names[entry.value]];
  if (!values) return;
  const row = entry.closest(".row");
  for (const [key, value] of Object.entries(values)) entryOf(row.querySelector(`:scope > [data-key="${key}"]`)).value = value;
  changed();
}
