// The board: a card for each tank, danger first, then what is due today. Its last cards are shown at once, before the
// log has been read; Python makes the verdicts anew in the background.

import { atMost } from "../at-most.js";
import { ask } from "../runtime.js";
import { day, said, shelf, table } from "./shelf-start.js";
import { keepingFocus } from "./focus.js";
import { ROUND } from "./settings.js";
import { readFront } from "./front.js";
import { aged } from "./overtaken.js";
import { keptStanding, onEachChange, roundNow, standingNow } from "./standings.js";
import { paintCard } from "./card.js";
import { showTroubles } from "./trouble-line.js";
import { paintKept } from "./kept-calculations.js";

const copyPart = () => import("./copy.js");

const FIRST_WITHIN = 1_000; // ms; a store that another tab holds shut keeps the page waiting no longer

let shownFirst = null; // the board of this page, with its first cards

/** Show the cards as they were last, before the log is read. */
export async function first(root) {
  const box = document.querySelector("#board");
  shownFirst = { root, box, store: null, cards: new Map(), turn: 0 };
  paintFront(shownFirst, await atMost(readFront(), FIRST_WITHIN));
}

export async function open() {
  const here = shownFirst;
  const { box } = here;
  try {
    here.store = await shelf();
  } catch (wrong) {
    box.dataset.shown = "nothing"; // whether there are tanks is not known
    box.querySelector("#board-empty").hidden = true;
    return said(box.querySelector("#board-week"), wrong);
  }
  showTroubles(here.store, box);
  onEachChange(here.store, box, () => show(here));
  box.querySelector("#demo-load").onclick = () => loadDemo(here);
  box.querySelector("#demo-remove").onclick = () => removeDemo(here);
  const { openCopy } = await copyPart(); // what it shows below stands before the cards come, so that nothing moves
  openCopy(here);
  await show(here);
  box.dataset.shown ??= "kept";
  return undefined;
}

/** The cards as they were last, where nothing was written since. */
function paintFront(here, front) {
  if (!front?.cards.length) return;
  const tanks = front.cards.map(({ tank }) => tank);
  const order = front.cards.map(({ tank, minutes }) => ({ tank: tank.id, minutes }));
  paint(here, tanks, front.cards.map(({ standing }) => aged(standing)), { day: front.day, order, minutes_week: front.minutes });
  here.box.dataset.shown = "kept";
}

/** Paint all that is kept, then ask Python for what is no longer true. */
async function show(here) {
  const turn = ++here.turn;
  const [tanks, round] = await Promise.all([here.store.tanks(), here.store.setting(ROUND)]);
  const kept = await Promise.all(tanks.map((tank) => keptStanding(here.store, tank)));
  if (turn !== here.turn) return;
  paint(here, tanks, kept, round);
  paintBelow(here, turn).catch(() => {}); // the cards stand without them
  anew(here, tanks, turn).catch((wrong) => {
    here.box.querySelector("#board-week").textContent = `Python could not start (${wrong.message}). What was kept stands here.`;
  });
}

/** The calculations kept, below the cards. */
async function paintBelow(here, turn) {
  if (turn === here.turn && here.box.isConnected) await paintKept(here.box.querySelector("#board-kept"), here.store, here.root);
}

/** The cards and what stands above them; a card that says the same already stays, so that no tap on it is lost. */
function paint(here, tanks, standings, round) {
  here.minutes = new Map(round?.day === day() ? round.order.map((one) => [one.tank, one.minutes]) : []); // due today
  for (const [at, tank] of tanks.entries()) put(here, tank, standings[at]);
  arrange(here, ranked(tanks, round));
  week(here, tanks, round);
  here.box.querySelector("#board-empty").hidden = tanks.length > 0;
  here.box.querySelector("#board-round").hidden = !tanks.length;
  here.box.querySelector("#demo-there").hidden = !tanks.some((tank) => tank.demo);
}

async function anew(here, tanks, turn) {
  if (!tanks.length) return;
  const operations = here.store.operations(); // what comes meanwhile is not in these cards
  const standings = [];
  for (const tank of tanks) {
    await new Promise((done) => { setTimeout(done); }); // a tap comes first
    const standing = await standingNow(here.store, tank);
    if (turn !== here.turn || !here.box.isConnected) return;
    standings.push(standing);
    put(here, tank, standing);
  }
  const round = await roundNow(here.store);
  if (turn !== here.turn || !round) return;
  paint(here, tanks, standings, round);
  here.box.dataset.shown = "anew";
  const cards = tanks.map((tank, at) => ({ tank, standing: standings[at], minutes: here.minutes.get(tank.id) }));
  await here.store.keepFront(ranked(tanks, round).map(({ id }) => cards.find(({ tank }) => tank.id === id)), { operations, day: round.day, minutes: round.minutes_week }).catch(() => {}); // no room: the board comes later
}

/** The tanks in the order that Python gave last; those that it has not seen come at the end. */
function ranked(tanks, round) {
  const places = new Map((round?.order ?? []).map((one, at) => [one.tank, at]));
  const place = ({ id }) => places.get(id) ?? places.size;
  return tanks.toSorted((one, other) => place(one) - place(other));
}

/** Put the cards into an order, and no others; nothing moves where it stands already. */
function arrange(here, tanks) {
  const list = here.box.querySelector("#board-cards");
  const wanted = tanks.map(({ id }) => here.cards.get(id));
  if (wanted.length === list.children.length && wanted.every((card, at) => list.children[at] === card)) return;
  const held = list.contains(document.activeElement) ? /** @type {HTMLElement} */ (document.activeElement) : null;
  list.replaceChildren(...wanted);
  held?.focus({ preventScroll: true }); // a card that is moved loses it
}

/** The card of a tank as it stands now, in place of the one before. */
function put(here, tank, standing) {
  const made = paintCard(here, tank, standing, here.minutes.get(tank.id));
  const old = here.cards.get(tank.id);
  if (old?.isEqualNode(made)) return;
  if (old?.isConnected) keepingFocus(here.box, () => old.replaceWith(made));
  here.cards.set(tank.id, made);
}

function week(here, tanks, round) {
  const said = here.box.querySelector("#board-week");
  const many = tanks.length === 1 ? "One tank" : `${tanks.length} tanks`;
  const minutes = round?.minutes_week;
  said.textContent = tanks.length ? `${many}${minutes === undefined || minutes === null ? "" : `, about ${Math.round(minutes)} minutes this week`}` : "";
}

/** The demo tanks, moved to today by Python, so that they stand as if they had been read this week. */
async function loadDemo(here) {
  const button = here.box.querySelector("#demo-load");
  button.disabled = true;
  button.textContent = "Setting them out";
  try {
    const { file } = await ask({ message: "redate", file: await table("demo"), today: day() });
    await here.store.merge(file);
  } catch (wrong) {
    here.box.querySelector("#board-week").textContent = `They could not be set out: ${wrong.message}`;
  }
  button.disabled = false;
  button.textContent = "Try it with four demo tanks";
}

async function removeDemo(here) {
  for (const tank of await here.store.tanks()) if (tank.demo) await here.store.removeTank(tank.id);
  const left = here.box.querySelector("#board-week");
  left.tabIndex = -1;
  left.focus();
}

