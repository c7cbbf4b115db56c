// What was logged, newest first: each can be changed or taken out.

import { element } from "../paint.js";
import { dayInWords, table } from "./shelf-start.js";
import { openLog } from "./log-sheet.js";
import { listOf, nameOf, openNames } from "./names.js";
import { inUnits } from "./units.js";
import { upper } from "./words.js";

const SHOWN = 5;

/** Paint a tank's entries into its list. */
export async function paintEntries(here, tank, all = false) {
  const [entries, fields] = await Promise.all([here.store.entries({ tank: tank.id }), table("fields"), openNames()]);
  const list = document.querySelector("#tank-entries");
  const shown = all ? entries : entries.slice(-SHOWN);
  list.replaceChildren(...shown.toReversed().map((one) => row(tank, one, fields)));
  if (!entries.length) list.append(element("li", { className: "hint", textContent: "Nothing is logged for this tank yet." }));
  const more = document.querySelector("#tank-more");
  more.hidden = shown.length === entries.length;
  more.textContent = `Show all ${entries.length}`;
  more.onclick = () => paintEntries(here, tank, true);
}

function row(tank, entry, fields) {
  const { label, value } = inWords(entry, fields);
  const change = element("button", { type: "button", textContent: "Change" });
  change.setAttribute("aria-label", `Change: ${label} of ${dayInWords(entry.at)}`);
  change.onclick = () => openLog(tank, { edit: entry });
  const when = element("time", { dateTime: entry.at, textContent: dayInWords(entry.at) });
  return element("li", {}, when, element("span", {}, element("b", { textContent: label }), ` ${value}`), change);
}

/** An entry as a person reads it. */
export function inWords(entry, fields) {
  const kind = fields.entries.find((one) => one.kind === entry.kind);
  const what = kind?.whats?.find((one) => one.what === entry.what);
  const list = kind && listOf(kind);
  const named = list && entry.what ? nameOf(list, entry.what) : "";
  const label = upper(entry.kind === "reading" ? (what?.label ?? entry.what) : [kind?.label ?? entry.kind, named || (what?.what ? what.label : "")].filter(Boolean).join(": "));
  const usual = entry.kind === "reading" ? undefined : kind?.whats?.[0]; // a reading that we do not know has no unit
  const figure = inUnits(what ?? usual ?? {}, entry.value);
  return { label, value: [figure, entry.text].filter(Boolean).join(", ") };
}
