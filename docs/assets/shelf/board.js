// The board: a card for each tank, danger first, then what is due today. What was kept is shown at once; Python
// makes the verdicts anew in the background.

import { ask } from "../runtime.js";
import { day, said, shelf, table } from "./opened.js";
import { openCopy } from "./copy.js";
import { paintKept } from "./kept.js";
import { keptStanding, onEachChange, roundNow, standingNow } from "./standings.js";
import { paintCard } from "./card.js";

export async function open(root) {
  const box = document.querySelector("#board");
  const here = { root, box, store: null, cards: new Map(), turn: 0 };
  try {
    here.store = await shelf();
  } catch (wrong) {
    box.hidden = false;
    return said(box.querySelector("#board-week"), wrong);
  }
  onEachChange(here.store, box, () => show(here));
  box.querySelector("#demo-load").onclick = () => loadDemo(here);
  box.querySelector("#demo-remove").onclick = () => removeDemo(here);
  openCopy(here);
  await show(here);
  box.dataset.shown = "kept";
}

/** Paint all that is kept, then ask Python for what is no longer true. */
async function show(here) {
  const turn = ++here.turn;
  const [tanks, round] = await Promise.all([here.store.tanks(), here.store.setting("round")]);
  const kept = await Promise.all(tanks.map((tank) => keptStanding(here.store, tank)));
  if (turn !== here.turn) return;
  const cards = tanks.map((tank, at) => cardOf(here, tank, kept[at]));
  const places = new Map((round?.order ?? []).map((one, at) => [one.tank, at]));
  cards.sort((one, other) => (places.get(one.dataset.tank) ?? places.size) - (places.get(other.dataset.tank) ?? places.size));
  here.box.querySelector("#board-cards").replaceChildren(...cards);
  week(here, tanks, round);
  here.box.querySelector("#board-empty").hidden = tanks.length > 0;
  here.box.querySelector("#board-round").hidden = !tanks.length;
  here.box.querySelector("#demo-there").hidden = !tanks.some((tank) => tank.demo);
  here.box.hidden = false;
  paintKept(here.box.querySelector("#board-kept"), here.store, here.root);
  anew(here, tanks, turn).catch((wrong) => {
    here.box.querySelector("#board-week").textContent = `Python could not start (${wrong.message}). What was kept stands here.`;
  });
}

async function anew(here, tanks, turn) {
  if (!tanks.length) return;
  await new Promise((done) => { setTimeout(done); }); // the board is drawn first
  for (const tank of tanks) {
    const standing = await standingNow(here.store, tank);
    if (turn !== here.turn || !here.box.isConnected) return;
    const old = here.cards.get(tank.id);
    if (old.from !== standing.from) old.card.replaceWith(cardOf(here, tank, standing));
  }
  const round = await roundNow(here.store);
  if (turn !== here.turn || !round) return;
  week(here, tanks, round);
  arrange(here, round);
  here.box.dataset.shown = "anew";
}

/** Put the cards into the order that Python gave; nothing moves where the order stands already. */
function arrange(here, round) {
  const list = here.box.querySelector("#board-cards");
  const wanted = round.order.map((one) => here.cards.get(one.tank)?.card).filter(Boolean);
  if (wanted.some((card, at) => list.children[at] !== card)) list.replaceChildren(...wanted);
}

function cardOf(here, tank, standing) {
  const card = paintCard(here, tank, standing);
  here.cards.set(tank.id, { card, from: standing?.from });
  return card;
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

