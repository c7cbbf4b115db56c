// A note: the one entry that needs the keyboard.

import { element } from "../paint.js";
import { called } from "./shelf-start.js";
import { tap } from "./sheet.js";

const LONGEST = 2000;

export function askNote(here) {
  here.name.textContent = `Note: ${called(here.tank)}`;
  const field = element("textarea", { id: "log-note", rows: 4, maxLength: LONGEST, value: here.edit?.text ?? "" });
  const save = tap("Save", () => {
    const text = field.value.trim();
    if (text) here.save({ text, words: "Note" });
    else field.focus();
  });
  save.classList.add("main");
  here.show(element("section", { className: "taps-part" }, element("label", { htmlFor: "log-note", textContent: "What you saw" }), field, save));
}
