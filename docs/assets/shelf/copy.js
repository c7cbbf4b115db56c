// A copy of the shelf as one file, out and in. What a file would change is shown before anything changes.

import { element, save as saveFile } from "../paint.js";
import { ask } from "../runtime.js";
import { day, dayInWords } from "./opened.js";
import { saidBelow } from "./sheet.js";

const MOST_BYTES = 20_000_000;
const NAME = "mulmbook-tanks.json";
const TYPE = "application/json";
const REMIND = 31; // days after which a copy is asked for

export function openCopy(here) {
  const find = (name) => here.box.querySelector(name);
  const text = async () => JSON.stringify(await here.store.toFile(), null, 1);
  const done = async () => {
    await here.store.saveSetting("last copy saved", day());
    await age(here);
  };
  find("#copy-save").onclick = async () => {
    saveFile(NAME, TYPE, await text());
    find("#copy-said").textContent = `Saved as ${NAME}.`;
    await done();
  };
  const share = find("#copy-share");
  const probe = new File(["{}"], NAME, { type: TYPE });
  share.hidden = !navigator.canShare?.({ files: [probe] });
  share.onclick = async () => {
    const file = new File([await text()], NAME, { type: TYPE });
    await navigator.share({ files: [file] }).then(done, () => {}); // closed by the keeper
  };
  find("#copy-read").onchange = ({ target }) => read(here, target);
  age(here);
}

/** How old the last copy is, with a reminder after a month. */
async function age(here) {
  const place = here.box.querySelector("#copy-age");
  const last = await here.store.setting("last copy saved");
  const old = !last || last < day(REMIND);
  const tanks = await here.store.tanks();
  place.textContent = last ? `Last copy saved ${dayInWords(last)}.${old ? " That is more than a month ago: save one today." : ""}` : "No copy was saved yet. What is kept here goes if this browser's storage is cleared.";
  place.classList.toggle("old", old && tanks.some((tank) => !tank.demo));
}

async function read(here, input) {
  const [file] = input.files;
  input.value = "";
  const said = here.box.querySelector("#copy-said");
  const box = here.box.querySelector("#copy-preview");
  box.hidden = true;
  if (!file) return;
  if (file.size > MOST_BYTES) {
    said.textContent = `${file.name} is larger than any shelf (20 MB at most). Nothing was changed.`;
    return;
  }
  const text = await file.text();
  said.textContent = "The file is being looked at.";
  try {
    const { complaints } = await ask({ calculator: "standing", "check-shelf-file": { text } });
    if (complaints.length) {
      said.textContent = `${file.name} was not read: ${complaints.slice(0, 3).join(" ")} Nothing was changed.`;
      return;
    }
    await preview(here, JSON.parse(text));
    said.textContent = "";
  } catch (wrong) {
    said.textContent = `${file.name} was not read: ${wrong.message} Nothing was changed.`;
  }
}

/** What a file would change; it changes nothing until it is agreed to. */
export async function preview(here, data) {
  const box = here.box.querySelector("#copy-preview");
  const { added, changed, same, tanks } = await here.store.compare(data);
  const names = (tanks ?? []).map((one) => one.name ?? one).join(", ");
  const take = element("button", { type: "button", className: "main", textContent: "Take it in" });
  const leave = element("button", { type: "button", textContent: "Leave it" });
  take.onclick = async () => {
    await here.store.merge(data);
    box.hidden = true;
    saidBelow("Taken in.", () => here.store.undo());
  };
  leave.onclick = () => { box.hidden = true; };
  const count = (list) => (Array.isArray(list) ? list.length : list);
  box.replaceChildren(element("p", {}, element("b", { textContent: `Tanks in it: ${names || "none"}.` })), element("p", { textContent: `New ${count(added)}, changed ${count(changed)}, the same ${count(same)}. Nothing here is lost.` }), element("p", { className: "shelf-do" }, take, leave));
  box.hidden = false;
  box.scrollIntoView({ block: "nearest" });
}
