// The log in three taps: the tank's button, what, its value. The time is now, and can be set back.

import { element } from "../paint.js";
import { called, shelf, table } from "./opened.js";
import { openWhen } from "./log-when.js";
import { askValue } from "./log-value.js";
import { askWhich } from "./log-which.js";
import { askNote } from "./log-note.js";
import { openSheet, saidBelow, tap, taps } from "./sheet.js";

const OFTEN = 6; // of what is logged most for this tank, offered first
const LOOKED_BACK = 60; // last entries that are counted for it

/** Open the sheet for a tank. `due` are the tasks of its standing, `edit` an entry to be changed. */
export async function openLog(tank, { due = [], edit = null } = {}) {
  const [store, fields] = await Promise.all([shelf(), table("fields")]);
  const here = { tank, store, fields, due, edit, ...openSheet(`Log: ${called(tank)}`) };
  here.when = openWhen(edit?.at);
  here.save = (entry) => save(here, entry);
  if (edit) askFor(here, kindOf(here, edit.kind), whatOf(here, edit));
  else await askWhat(here);
}

function kindOf(here, kind) {
  return here.fields.entries.find((one) => one.kind === kind);
}

function whatOf(here, entry) {
  return kindOf(here, entry.kind)?.whats?.find((one) => one.what === entry.what) ?? null;
}

/** All that can be logged; what this keeper logs most stands first. */
async function askWhat(here) {
  const entries = await here.store.entries({ tank: here.tank.id });
  const all = here.fields.entries.flatMap((kind) => choices(kind));
  const last = new Map(entries.map((one) => [keyOf(one), one]));
  const counts = new Map();
  for (const one of entries.slice(-LOOKED_BACK)) counts.set(keyOf(one), (counts.get(keyOf(one)) ?? 0) + 1);
  const often = all.filter((one) => counts.has(one.key)).sort((one, other) => counts.get(other.key) - counts.get(one.key)).slice(0, OFTEN);
  const button = (one) => tap(one.label, () => askFor(here, one.kind, one.what), { small: lastWords(last.get(one.key), one) });
  const rest = all.filter((one) => !often.includes(one));
  const parts = [often.length ? taps("Logged most here", often.map(button)) : "", taps(often.length ? "All else" : "What", rest.map(button))];
  here.body.replaceChildren(...parts, here.when.box);
}

/** A kind as what can be tapped: its whats, or itself where what is asked next. */
function choices(kind) {
  const own = kind.whats?.length && !kind.from_tank;
  if (own && kind.kind === "reading") return kind.whats.map((what) => ({ key: `${kind.kind} ${what.what}`, label: what.label, kind, what }));
  return [{ key: `${kind.kind} ${kind.whats?.length === 1 ? (kind.whats[0].what ?? "") : ""}`.trim(), label: kind.label, kind, what: kind.whats?.length === 1 ? kind.whats[0] : null }];
}

function keyOf({ kind, what }) {
  return kind === "reading" ? `${kind} ${what}` : kind;
}

function lastWords(entry, { what }) {
  if (entry?.value === undefined || entry.value === null) return "";
  return `last ${entry.value}${what?.unit ? ` ${what.unit}` : ""}`;
}

function askFor(here, kind, what) {
  const ways = { note: askNote, plant: askWhich, animal: askWhich, death: askWhich, dose: askWhich };
  here.kind = kind;
  here.what = what;
  const ask = what || !(kind.kind in ways) ? askValue : ways[kind.kind];
  (kind.kind === "note" ? askNote : ask)(here);
  if (!here.edit) here.body.prepend(backRow(here));
  here.body.append(here.when.box);
  here.name.focus();
}

function backRow(here) {
  const back = element("button", { type: "button", className: "sheet-back", textContent: "Something else" });
  back.onclick = () => {
    here.name.textContent = `Log: ${called(here.tank)}`;
    askWhat(here);
  };
  return back;
}

/** Write it, close the sheet, and say what was written. `more` are further entries of the same tap. */
async function save(here, { words, more = [], ...entry }) {
  const { tank, kind, edit, store } = here;
  here.close();
  try {
    if (edit) {
      await store.edit(edit.id, { ...entry, at: here.when.at() });
      return saidBelow(`Changed: ${words}, ${called(tank)}`, () => store.undo());
    }
    const written = [];
    for (const one of [{ tank: tank.id, kind: kind.kind, ...entry }, ...more]) written.push(await store.log({ at: here.when.at(), ...one }));
    return saidBelow(`${words}, ${called(tank)}`, async () => { for (const one of written.reverse()) await store.remove(one.id); });
  } catch (wrong) {
    if (!wrong.reason) throw wrong;
    return saidBelow(wrong.message);
  }
}
