// The log in three taps: the tank's button, what, its value. The time is now, and can be set back.

import { element } from "../paint.js";
import { called, shelf, table } from "./shelf-start.js";
import { figureKey, figureOf, keepFigure } from "./figure-draft.js";
import { livesIn } from "./occupants.js";
import { askNote } from "./log-note.js";
import { askValue } from "./log-value.js";
import { openWhen } from "./log-when.js";
import { askWhich } from "./log-which.js";
import { openNames } from "./names.js";
import { newId } from "./operations.js";
import { openSheet, saidBelow, tap, taps } from "./sheet.js";
import { inUnits } from "./units.js";
import { upper } from "./words.js";

const OFTEN = 6; // of what is logged most for this tank, offered first
const LOOKED_BACK = 60; // last entries that are counted for it

/** Open the sheet for a tank; `edit` is an entry to be changed. */
export async function openLog(tank, { edit = null } = {}) {
  const [store, fields] = await Promise.all([shelf(), table("fields"), openNames()]);
  /** @type {Record<string, any>} */
  const here = { tank, store, fields, edit, lives: await livesIn(store, tank), ...openSheet(`Log: ${called(tank)}`) };
  here.sheet.addEventListener("close", () => here.unsaved && saidBelow(`Not logged: ${here.unsaved.words}, ${called(tank)}. It stands in the sheet again today.`));
  here.when = openWhen(edit?.at);
  here.save = (entry) => save(here, entry);
  here.show = (...parts) => here.body.replaceChildren(...(here.back ? [here.back] : []), ...parts, here.when.box);
  const kind = edit && fields.entries.find((one) => one.kind === edit.kind);
  if (!edit) return askWhat(here);
  here.back = takeOut(here);
  if (kind) return askFor(here, kind, kind.whats.find((one) => one.what === edit.what));
  return here.show(element("p", { textContent: "A newer version of the book wrote this entry; it can be taken out." }));
}

/** The way out of the log for an entry. */
function takeOut(here) {
  const { store, edit, tank } = here;
  return tap("Take it out of the log", async () => {
    const action = newId();
    try {
      await store.remove(edit.id, { action });
    } catch (wrong) {
      return here.say(wrong.message);
    }
    here.unsaved = null;
    here.close();
    return saidBelow(`Taken out of the log, ${called(tank)}`, () => store.undo(action));
  });
}

/** All that can be logged; what this keeper logs most stands first. */
async function askWhat(here) {
  const entries = await here.store.entries({ tank: here.tank.id });
  const all = here.fields.entries.flatMap(choices);
  const last = new Map(entries.map((one) => [keyOf(one), one]));
  const counts = new Map();
  for (const one of entries.slice(-LOOKED_BACK)) counts.set(keyOf(one), (counts.get(keyOf(one)) ?? 0) + 1);
  const often = all.filter((one) => counts.has(one.key)).sort((one, other) => counts.get(other.key) - counts.get(one.key)).slice(0, OFTEN);
  const button = (one) => tap(one.label, () => askFor(here, one.kind, one.what), { small: typedWords(here, one) || lastWords(last.get(one.key), one) });
  const rest = all.filter((one) => !often.includes(one));
  here.back = null;
  here.name.textContent = `Log: ${called(here.tank)}`;
  here.show(often.length ? taps("Logged most here", often.map(button)) : "", taps(often.length ? "All else" : "What", rest.map(button)));
}

/** A kind as what can be tapped: each reading by itself, any other kind as one. */
function choices(kind) {
  if (kind.of !== "readings") return [{ key: kind.kind, label: upper(kind.label), kind, what: null }];
  return kind.whats.map((what) => ({ key: `${kind.kind} ${what.what}`, label: upper(what.label), kind, what }));
}

function keyOf({ kind, what }) {
  return kind === "reading" ? `${kind} ${what}` : kind;
}

function lastWords(entry, { what, kind }) {
  const figure = inUnits(what ?? kind.whats[0] ?? {}, entry?.value);
  return figure && `last ${figure}`;
}

/** That a figure of it was typed today and not saved. */
function typedWords({ tank }, { kind, what }) {
  const typed = figureOf(figureKey({ tank, kind, what: what ?? kind.whats[0], edit: null }));
  return typed && `${typed.text} ${typed.unit} typed, not logged`.replace("  ", " ");
}

function askFor(here, kind, what) {
  Object.assign(here, { kind, what, chosenOf: null });
  if (!here.edit) here.back = backButton(here);
  if (!kind.whats.length) askNote(here);
  else if (!what && kind.must.includes("what")) askWhich(here);
  else askValue(here);
  here.name.focus();
}

function backButton(here) {
  const back = element("button", { type: "button", className: "sheet-back", textContent: "Something else" });
  back.onclick = () => askWhat(here);
  return back;
}

/** Write it, close the sheet, and say what was written. `more` are further entries of the same tap, `draft` is the key of its figure. */
async function save(here, { words, draft = "", more = [], ...entry }) {
  const { tank, kind, edit, store } = here;
  if (here.saving) return false; // a second tap while the first is being written
  here.saving = true;
  const tap = { action: newId() };
  try {
    if (edit) await store.edit(edit.id, { ...entry, at: here.when.at() }, tap);
    else for (const one of [{ tank: tank.id, kind: kind.kind, ...entry }, ...more]) await store.log({ at: here.when.at(), ...one }, tap);
    keepFigure(draft, "", "");
    const other = here.unsaved && here.unsaved.key !== draft ? `. Not logged: ${here.unsaved.words}` : "";
    here.unsaved = null;
    here.close();
    saidBelow(`${edit ? "Changed: " : ""}${words}, ${called(tank)}${other}`, () => store.undo(tap.action));
    return true;
  } catch (wrong) {
    if (!wrong.reason) throw wrong;
    await store.undo(tap.action).catch(() => {}); // of two entries the first may be written
    here.say(wrong.message);
    return false;
  } finally {
    here.saving = false;
  }
}
