// A tank's page: how it stands as Python painted it, what lives in it, what was logged, the tank itself.

import { ask } from "../runtime.js";
import { chosenUnits } from "../device-choices.js";
import { writeEntry } from "../history-entry.js";
import { element, openFiles, paintAnswer } from "../paint.js";
import { openPictures } from "../plot.js";
import { closeAfterPrint, openForPrint } from "../print-folds.js";
import { called, dayInWords, onHash, said, shelf, table } from "./shelf-start.js";
import { paintEntries } from "./entry-list.js";
import { paintKept } from "./kept-calculations.js";
import { livesOf } from "./occupants.js";
import { holdOnLeaving } from "./leaving.js";
import { openLog } from "./log-sheet.js";
import { openNames } from "./names.js";
import { entered } from "./dated-values.js";
import { openHandOn } from "./hand-on.js";
import { newId } from "./operations.js";
import { saidBelow } from "./sheet.js";
import { keptStanding, onEachChange, standingNow } from "./standings.js";
import { fieldsOf } from "./tank-fields.js";
import { listsAnew, paintLives } from "./tank-lives.js";
import { filled } from "./fill.js";
import { showTroubles } from "./trouble-line.js";
import { openUnits } from "./units-choice.js";
import { painted } from "../trust.js";

const PLACE = "place"; // where the keeper lives: the same for all tanks

window.addEventListener("beforeprint", () => whileHere(openForPrint));
window.addEventListener("afterprint", () => whileHere(closeAfterPrint));

/** Do something to the page of a tank, where it still stands. */
function whileHere(work) {
  const box = document.querySelector("#tank-page");
  if (box) work(box);
}

export async function open(root) {
  const box = document.querySelector("#tank-page");
  const here = { root, box, find: (name) => box.querySelector(name), turn: 0 };
  openPictures();
  try {
    here.store = await shelf();
  } catch (wrong) {
    box.hidden = false;
    return said(here.find("#tank-said"), wrong);
  }
  showTroubles(here.store, box);
  holdOnLeaving(here.find("#tank-form"));
  onEachChange(here.store, box, () => show(here));
  onHash(box, () => show(here, true));
  openUnits(() => show(here, true));
  return show(here, true);
}

async function show(here, whole = false) {
  const turn = ++here.turn;
  here.whole ||= whole; // until the form is painted, which a change meanwhile would put off
  const id = decodeURIComponent(location.hash.slice(1)) || (await here.store.chosen());
  const [tank, fields] = await Promise.all([id ? here.store.tank(id) : null, table("fields"), openNames()]);
  if (turn !== here.turn) return;
  document.querySelector("#tank-title").textContent = tank ? tank.name : "No such tank on this device";
  document.querySelector("#no-tank").hidden = Boolean(tank);
  if (!tank) {
    here.box.hidden = true;
    return;
  }
  document.title = tank.name;
  if (!location.hash) writeEntry(here.box, `#${tank.id}`); // another choice in the head is for other pages
  if (whole && (await here.store.chosen()) !== tank.id) await here.store.choose(tank.id); // whoever opens its page stands at it
  if (turn !== here.turn) return;
  Object.assign(here, { tank, fields: fields.tank });
  here.box.hidden = false;
  here.find("#tank-demo").hidden = !tank.demo;
  here.find("#tank-paper").href = new URL(`shelf/paper/#${tank.id}`, here.root).href;
  here.find("#tank-log").onclick = () => openLog(tank);
  here.find("#tank-edit").onclick = (event) => {
    event.preventDefault();
    here.find("#edit").setAttribute("open", "");
    here.find("#edit").scrollIntoView({ block: "start" });
  };
  const kept = await keptStanding(here.store, tank);
  if (turn !== here.turn) return;
  if (here.whole) {
    here.whole = false;
    const own = fields.tank.filter((one) => !["id", "demo"].includes(one.key));
    here.find("#tank-form").replaceChildren(...fieldsOf({ ...tank, lives: livesOf(tank, kept) }, own, (path, value) => save(here, path, value)));
    here.find("#tank-nitrogen .painted").replaceChildren();
    here.find("#tank-nitrogen .hint").textContent = "";
    here.find("#tank-nitrogen summary span").textContent = "";
    openHandOn(here, tank);
    sums(here, fields);
    here.find("#tank-remove").onclick = () => remove(here, tank);
  }
  here.standing = kept;
  await paintEntries(here, tank);
  paintKept(here.find("#tank-kept"), here.store, here.root, tank);
  paintStanding(here, kept, true);
  anew(here, tank, turn).catch((wrong) => { here.find("#tank-old").textContent = `Python could not start (${wrong.message}).`; });
}

async function anew(here, tank, turn) {
  const standing = await standingNow(here.store, tank);
  if (turn !== here.turn || !here.box.isConnected) return;
  paintStanding(here, standing, false);
  await listsAnew(here, tank, (path, value) => save(here, path, value));
  const given = await filled("nitrogen-balance", tank, await here.store.entries({ tank: tank.id }));
  const reply = await ask({ calculator: "nitrogen-balance", given: given?.values ?? {}, given_in: "metric", own: true, units: chosenUnits() });
  if (turn !== here.turn || !here.box.isConnected) return;
  here.find("#tank-nitrogen .hint").textContent = reply.painted ? `By a week's feed, changes and plants of ${called(tank)}.` : (reply.needed?.text ?? "The figures of the tank do not allow this sum yet.");
  here.find("#tank-nitrogen summary span").textContent = reply.painted ? `. ${reply.painted.brief.text}` : "";
  here.find("#tank-nitrogen .painted").innerHTML = painted(reply.painted?.html ? withoutIds(reply.painted.html) : "");
  openFiles(here.find("#tank-nitrogen .painted"));
}

/** Two painted answers stand in one page: ids of the second would stand twice. */
function withoutIds(html) {
  const other = new DOMParser().parseFromString(painted(html), "text/html");
  const ids = [...other.querySelectorAll("[id]")];
  for (const one of ids) one.id = `nitrogen-${one.id}`;
  for (const one of other.querySelectorAll("[aria-labelledby], [aria-describedby]")) {
    for (const name of ["aria-labelledby", "aria-describedby"]) if (one.hasAttribute(name)) one.setAttribute(name, one.getAttribute(name).split(" ").map((id) => `nitrogen-${id}`).join(" "));
  }
  return other.body.innerHTML;
}

function paintStanding(here, standing, old) {
  here.standing = standing;
  here.find("#tank-old").textContent = old && standing ? `As of ${dayInWords(standing.made)}; being made anew.` : (standing?.wrong ?? (standing ? "" : "Python is loading."));
  paintLives(here, here.tank, here.fields);
  const html = standing?.html ?? ""; // the answer of the tank before this one goes at once
  if (html === here.html) return; // what was opened in it stays open
  here.html = html;
  paintAnswer(html);
}

/** The calculators that fill themselves from a tank. */
function sums(here, fields) {
  const links = Object.keys(fields.fills).toSorted().map((name) => element("li", {}, element("a", { className: "button", href: new URL(`calculators/${name}/`, here.root).href, textContent: fields.titles[name] })));
  here.find("#tank-sums").replaceChildren(...links);
}

async function save(here, path, value) {
  const action = newId();
  try {
    const fields = await table("fields");
    const also = path === PLACE && !here.tank.demo ? (await here.store.tanks()).filter((one) => one.id !== here.tank.id && !one.demo) : [];
    for (const one of [await here.store.tank(here.tank.id), ...also]) await here.store.saveTank(entered(one, path, value, fields), { action });
    saidBelow(also.length ? "Saved to all your tanks." : "Saved to the tank.", () => here.store.undo(action).then(() => show(here, true)));
  } catch (wrong) {
    said(here.find("#tank-said"), wrong);
  }
}

async function remove(here, tank) {
  const action = newId();
  try {
    await here.store.removeTank(tank.id, { action });
  } catch (wrong) {
    return said(here.find("#tank-said"), wrong);
  }
  saidBelow(`${tank.name} is off the shelf, with its log.`, async () => {
    await here.store.undo(action);
    await show(here, true);
  });
  const title = document.querySelector("#tank-title"); // far above the button, and all between is gone
  title.setAttribute("tabindex", "-1");
  return /** @type {HTMLElement} */ (title).focus();
}
