// A note that was not saved yet, kept for this tab: neither a closed sheet nor the way back loses its words.

import { forTab, keepForTab } from "./for-tab.js";

const DRAFT = "mulmbook-note-";

/** What was typed for this tank and not saved; empty where nothing was. */
export function draftOf(tank) {
  return forTab(DRAFT + tank) ?? "";
}

export function keepDraft(tank, text) {
  keepForTab(DRAFT + tank, text || null);
}
