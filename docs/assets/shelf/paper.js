// A tank on paper, as Python wrote it: a card to stick to it, and a sheet for whoever feeds during a holiday.
// Every line can be changed before it is printed. Which sheet, and for which days, stands in the page's address.

import { writeEntry } from "../history-entry.js";
import { ask } from "../runtime.js";
import { numberOf } from "./number.js";
import { called, day, onHash, said, shelf } from "./shelf-start.js";
import { followLines, forgetLines } from "./paper-changes.js";
import { CALL, SPOON } from "./settings.js";
import { tankCode } from "./qr.js";
import { painted } from "../trust.js";

const HOLIDAY = "holiday"; // as the button of the sheet has it
const FIRST_DAYS = 7; // of a holiday, until the keeper says otherwise

export async function open(root) {
  const box = document.querySelector("#paper");
  const address = new URLSearchParams(location.search);
  const here = { root, box, sheet: address.get("sheet") === HOLIDAY ? HOLIDAY : "card", turn: 0, find: (name) => box.querySelector(name) };
  onHash(box, () => show(here));
  for (const button of box.querySelectorAll("[data-sheet]")) button.onclick = () => choose(here, button.dataset.sheet);
  here.find("#paper-print").onclick = () => print();
  here.find("#paper-holiday").onchange = () => {
    keepAddress(here);
    return keepAsked(here).then(() => show(here));
  };
  try {
    here.store = await shelf();
  } catch (wrong) {
    box.hidden = false;
    return said(here.find("#paper-said"), wrong);
  }
  await fillAsked(here, address);
  return choose(here, here.sheet);
}

/** A reload, or a bookmark, shows the same sheet for the same days. */
function keepAddress({ box, sheet, find }) {
  const asked = new URLSearchParams({ sheet, from: find("input#paper-from").value, to: find("input#paper-to").value });
  writeEntry(box, location.pathname + (sheet === HOLIDAY ? `?${asked}` : "") + location.hash);
}

async function choose(here, sheet) {
  here.sheet = sheet;
  for (const button of here.box.querySelectorAll("[data-sheet]")) button.setAttribute("aria-pressed", String(button.dataset.sheet === sheet));
  here.find("#paper-holiday").hidden = sheet !== HOLIDAY;
  keepAddress(here);
  await show(here);
}

async function fillAsked(here, address) {
  const [spoon, call] = await Promise.all([here.store.setting(SPOON), here.store.setting(CALL)]);
  fillDay(here.find("input#paper-from"), address.get("from"), day(-1));
  fillDay(here.find("input#paper-to"), address.get("to"), day(-FIRST_DAYS));
  here.find("input#paper-spoon").value = spoon ?? "";
  here.find("input#paper-call").value = call ?? "";
}

/** The day that the address has, or another where that is none: the field takes nothing but a day. */
function fillDay(field, given, other) {
  field.value = given ?? other;
  if (!field.value) field.value = other;
}

/** What the holiday sheet asks; a spoon that is no number goes to Python as it is, which says what is wrong. */
function asked(here) {
  const spoon = here.find("input#paper-spoon").value.trim();
  const grams = numberOf(spoon);
  return { from: here.find("input#paper-from").value, to: here.find("input#paper-to").value, spoon_g: Number.isFinite(grams) ? grams : spoon || null, call: here.find("input#paper-call").value.trim() || null };
}

async function keepAsked(here) {
  const { spoon_g: spoon, call } = asked(here);
  await here.store.saveSetting(SPOON, typeof spoon === "number" ? spoon : null);
  await here.store.saveSetting(CALL, call);
}

async function show(here) {
  const turn = ++here.turn;
  const id = decodeURIComponent(location.hash.slice(1)) || (await here.store.chosen());
  const tank = id && (await here.store.tank(id));
  here.box.hidden = !tank;
  document.querySelector("#no-tank").hidden = Boolean(tank);
  document.querySelector("#paper-title").textContent = tank ? `On paper: ${called(tank)}` : "No such tank on this device";
  if (!tank) return;
  const entries = await here.store.entries({ tank: tank.id });
  const line = here.find("#paper-said");
  try {
    const reply = await ask({ message: "paper", kind: here.sheet, tank: { ...tank, name: called(tank) }, entries, today: day(), ...asked(here) });
    if (turn !== here.turn) return; // another sheet or tank was chosen meanwhile
    line.textContent = (reply.complaints ?? []).map(({ why }) => why).join(" ");
    if (!reply.html) return;
    here.find("#paper-sheet").innerHTML = painted(reply.html); // its texts escaped in Python
    await coded(here, tank);
    const paper = { tank: tank.id, sheet: here.sheet };
    const back = here.find("#paper-back");
    followLines(here.find("#paper-sheet"), paper, (any) => { back.hidden = !any; });
    back.onclick = () => {
      forgetLines(paper);
      return show(here);
    };
  } catch (wrong) {
    line.textContent = `Python could not start (${wrong.message}).`;
  }
}

/** Put the tank's code where there is room for it; the lines can be changed as Python marked them. */
async function coded(here, tank) {
  const place = here.find("#paper-sheet [data-code]");
  if (place && here.sheet === "card") place.innerHTML = painted((await tankCode(tank, new URL("shelf/", here.root).href)).svg); // the name in it escaped there
}
