// A note: the one entry that needs the keyboard.

import { element } from "../paint.js";
import { called } from "./shelf-start.js";
import { draftOf, keepDraft } from "./note-draft.js";
import { tap } from "./sheet.js";

const LONGEST = 2000;

export function askNote(here) {
  here.name.textContent = `Note: ${called(here.tank)}`;
  const field = element("textarea", { id: "log-note", rows: 4, maxLength: LONGEST, value: here.edit ? (here.edit.text ?? "") : draftOf(here.tank.id) });
  if (!here.edit) field.oninput = () => keepDraft(here.tank.id, field.value);
  const save = tap("Save", async () => {
    const text = field.value.trim();
    if (!text) field.focus();
    else if ((await here.save({ text, words: "Note" })) && !here.edit) keepDraft(here.tank.id, "");
  });
  save.classList.add("main");
  here.show(element("section", { className: "taps-part" }, element("label", { htmlFor: "log-note", textContent: "What you saw" }), field, save));
}
