// A copy of the shelf as one file, out and in, and a tank that came by a link. What they would change is shown before
// anything changes.

import { writeEntry } from "../history-entry.js";
import { ask } from "../runtime.js";
import { element } from "../paint.js";
import { copyDue, saveCopy, saveReadings } from "./copies.js";
import { readShelfFile } from "./file.js";
import { hasTank, readTankLink } from "./link.js";
import { dayInWords } from "./shelf-start.js";
import { newId } from "./operations.js";
import { saidBelow } from "./sheet.js";

const DONE = { shared: "Handed on.", saved: "Saved as a file.", cancelled: "" };
const MOST_TOLD = 3; // complaints of Python that are shown
const COUNTS = { added: "new", changed: "changed", returned: "taken off here before", older: "older than what stands here, and left", same: "the same" };

export function openCopy(here) {
  const find = (name) => here.box.querySelector(name);
  const said = (text) => { find("#copy-said").textContent = text; };
  find("#copy-save").onclick = async () => {
    said(DONE[await saveCopy(here.store)]);
    await age(here);
  };
  find("#copy-readings").onclick = async () => said(DONE[await saveReadings(here.store)]);
  find("#copy-read").onchange = ({ target }) => readIn(here, target, said);
  age(here);
  find("#board-copy").hidden = false;
  if (hasTank(location.hash)) arrive(here, said);
}

/** How old the last copy is, with a reminder after a month. */
async function age(here) {
  const place = here.box.querySelector("#copy-age");
  const [last, due] = await Promise.all([here.store.setting("copy"), copyDue(here.store)]);
  const words = last ? `Last copy saved ${dayInWords(last)}.` : "No copy was saved yet: what stands here goes if this browser's storage is cleared.";
  place.textContent = `${words}${due ? " Save one today." : ""}`;
  place.classList.toggle("old", due);
}

async function readIn(here, input, said) {
  const [file] = input.files;
  input.value = "";
  here.box.querySelector("#copy-preview").hidden = true;
  if (!file) return;
  said("The file is being looked at.");
  try {
    await preview(here, await readShelfFile(file, await here.store.tanks()), file.name, said);
  } catch (wrong) {
    said(wrong.message);
  }
}

/** A tank that came in the address itself. */
async function arrive(here, said) {
  said("The tank in this link is being looked at.");
  try {
    await preview(here, await readTankLink(location.hash), "This link", said);
  } catch (wrong) {
    said(wrong.message);
  }
  writeEntry(here.box, location.pathname); // read once; a new load of the page asks no more
}

/** What a file would change; Python looks at what its figures mean, and nothing changes until it is agreed to. */
async function preview(here, data, name, said) {
  const { complaints } = await ask({ message: "check-shelf-file", text: JSON.stringify(data) });
  if (complaints.length) {
    const told = complaints.slice(0, MOST_TOLD).map(({ field, why }) => `${field}: ${why}`).join("; ");
    return said(`${name} was not taken in. ${told}${complaints.length > MOST_TOLD ? `; and ${complaints.length - MOST_TOLD} more` : ""}. Nothing was changed.`);
  }
  said("");
  const box = here.box.querySelector("#copy-preview");
  const found = await here.store.compare(data);
  const take = element("button", { type: "button", className: "main", textContent: "Take it in" });
  const leave = element("button", { type: "button", textContent: "Leave it" });
  take.onclick = async () => {
    const action = newId();
    box.hidden = true;
    try {
      await here.store.merge(data, { action });
      saidBelow("Taken in.", () => here.store.undo(action)).focus(); // the button that had it is gone
    } catch (wrong) {
      said(wrong.message);
    }
  };
  leave.onclick = () => {
    box.hidden = true;
    here.box.querySelector("#copy-read").focus();
  };
  const rows = found.tanks.map((one) => element("li", {}, element("b", { textContent: one.name }), `: ${COUNTS[one.is]}; entries ${counted(one.entries)}`));
  box.replaceChildren(element("p", {}, element("b", { textContent: `${name} holds:` })), element("ul", {}, ...rows), element("p", { textContent: `In all ${counted(found)}. Nothing has changed yet.` }), element("p", { className: "shelf-do" }, take, leave));
  box.hidden = false;
  box.tabIndex = -1;
  return box.focus();
}

function counted(counts) {
  return Object.entries(COUNTS).filter(([key]) => counts[key]).map(([key, words]) => `${counts[key]} ${words}`).join(", ") || "none";
}
