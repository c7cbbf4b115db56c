// A note that was not saved yet, kept for this tab: neither a closed sheet nor the way back loses its words.

const DRAFT = "mulmbook-note-";

/** What was typed for this tank and not saved; empty where nothing was. */
export function draftOf(tank) {
  try {
    return sessionStorage.getItem(DRAFT + tank) ?? "";
  } catch {
    return ""; // storage is off
  }
}

export function keepDraft(tank, text) {
  try {
    if (text) sessionStorage.setItem(DRAFT + tank, text);
    else sessionStorage.removeItem(DRAFT + tank);
  } catch {
    // storage is off: the words last as long as the sheet
  }
}
