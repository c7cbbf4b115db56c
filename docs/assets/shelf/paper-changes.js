// What the keeper wrote over lines of a sheet of paper, kept for this tab: a reload loses none of it. A change goes with
// the line that it was written over, and is gone where Python writes another one there.

import { forTab, keepForTab } from "./for-tab.js";

const CHANGES = "mulmbook-paper-";

/** Put back what was written over the lines of a sheet, and keep what is written from now on; `said(any)` hears whether there is anything. */
export function followLines(box, { tank, sheet }, said) {
  const name = `${CHANGES}${tank} ${sheet}`;
  const kept = new Map(Object.entries(forTab(name) ?? {}));
  const lines = linesOf(box);
  for (const [key, { line }] of lines) if (kept.has(key)) line.textContent = kept.get(key);
  const stand = () => [...lines].filter(([, { line, first }]) => wordsOf(line) !== first).map(([key, { line }]) => [key, wordsOf(line)]);
  for (const { line } of lines.values()) {
    line.oninput = () => {
      const now = stand();
      keepForTab(name, now.length ? Object.fromEntries(now) : null);
      said(now.length > 0);
    };
  }
  said(stand().length > 0);
}

/** Let go of what was written over the lines of a sheet. */
export function forgetLines({ tank, sheet }) {
  keepForTab(`${CHANGES}${tank} ${sheet}`, null);
}

/** What stands in a line, with the ends of lines that were typed into it. */
function wordsOf(line) {
  // biome-ignore lint/performance/useDomNodeTextContent: a line that was typed is an element, and its end is in no text
  return line.innerText;
}

/** The lines by their own words; those that say the same are counted. */
function linesOf(box) {
  const lines = new Map();
  for (const line of box.querySelectorAll("[contenteditable]")) {
    const first = wordsOf(line);
    let key = first;
    for (let number = 2; lines.has(key); number += 1) key = `${first} (${number})`;
    lines.set(key, { line, first });
  }
  return lines;
}
