// A figure that was typed in the log's sheet and not saved, kept for this tab until the day is over. It stands in the
// field again for the same entry of the same tank, in the same unit; nothing that reads the log ever sees it.

import { day } from "./day.js";
import { forTab, keepForTab } from "./for-tab.js";
import { localTime } from "./when.js";

const DRAFT = "mulmbook-figures";

/** What an entry is of, as the figures are kept by it; `heading` tells in from out, and into which tank. */
export function figureKey({ tank, kind, what, edit }, heading = "") {
  return edit ? `edit ${edit.id}` : [tank.id, kind.kind, what?.what ?? "", heading].join(" ");
}

/** What was typed today and not saved: `{text, unit, time}` with the time of day; null where nothing was. */
export function figureOf(key) {
  const held = today()[key];
  return typeof held?.text === "string" ? held : null;
}

/** Keep what was typed under its key; an empty text takes it away. */
export function keepFigure(key, text, unit) {
  const { [key]: _, ...others } = today();
  const all = text ? { ...others, [key]: { text, unit, time: localTime().slice(-5) } } : others;
  keepForTab(DRAFT, Object.keys(all).length ? { day: day(), all } : null);
}

function today() {
  const held = forTab(DRAFT);
  return held?.day === day() ? (held.all ?? {}) : {};
}
