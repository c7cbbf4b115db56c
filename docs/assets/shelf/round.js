// One round through all tanks in walking order: what each needs today, ticked off as it is done.

import { element } from "../paint.js";
import { saveCalendar } from "./copies.js";
import { called, day, said, shelf } from "./shelf-start.js";
import { keepingFocus, twinOf } from "./focus.js";
import { openLog } from "./log-sheet.js";
import { ROUND, TICKS } from "./settings.js";
import { tap } from "./sheet.js";
import { keptStanding, onEachChange, roundNow, standingNow } from "./standings.js";
import { showTroubles } from "./trouble-line.js";
import { sign } from "./verdict.js";

const NOT_YET = "Not worked out for today yet.";

export async function open(root) {
  const box = document.querySelector("#round");
  const here = { root, box, find: (name) => box.querySelector(name), turn: 0 };
  box.hidden = false;
  try {
    here.store = await shelf();
  } catch (wrong) {
    return said(here.find("#round-said"), wrong);
  }
  showTroubles(here.store, box);
  onEachChange(here.store, box, () => show(here));
  here.find("#round-again").onclick = () => attempt(here, () => here.store.saveSetting(TICKS, { day: day(), done: [] }));
  await show(here);
  return anew(here).catch((wrong) => { here.find("#round-said").textContent = `Python could not start (${wrong.message}). What was kept stands here.`; });
}

/** Write something, or say why not; then show what stands there now. */
async function attempt(here, write) {
  const line = here.find("#round-said");
  line.textContent = "";
  await write().catch((wrong) => said(line, wrong));
  await show(here);
}

async function anew(here) {
  for (const tank of await here.store.tanks()) await standingNow(here.store, tank);
  here.round = await roundNow(here.store);
  if (here.box.isConnected) await show(here);
}

async function show(here) {
  const turn = ++here.turn;
  const [tanks, kept, ticks] = await Promise.all([here.store.tanks(), here.store.setting(ROUND), here.store.setting(TICKS)]);
  const round = here.round ?? kept;
  const done = doneToday(ticks);
  const parts = [];
  for (const [at, tank] of tanks.entries()) parts.push(await stop(here, tank, round, done, tanks, at));
  if (turn !== here.turn) return;
  keepingFocus(here.box, () => here.find("#round-tanks").replaceChildren(...parts));
  await showFirst(here, tanks, round, turn);
  const left = here.box.querySelectorAll("#round-tanks input:not(:checked)").length;
  here.find("#round-week").textContent = tanks.length ? weekWords(round, left) : "No tank stands on the shelf yet.";
  here.find("#round-none").hidden = tanks.length > 0;
  for (const part of ["#round-again", "#round-order"]) here.find(part).hidden = !tanks.length;
  const file = here.find("#round-calendar");
  file.hidden = !round?.calendar;
  file.onclick = () => saveCalendar(round.calendar);
}

/** The tanks where animals are in danger, before any walk: what kills first stands first, as Python put them. */
async function showFirst(here, tanks, round, turn) {
  const standings = await Promise.all(tanks.map(async (tank) => [tank, (await keptStanding(here.store, tank))?.outputs?.verdict]));
  if (turn !== here.turn) return;
  const order = (isOfToday(round) ? round.order : [])?.map(({ tank }) => tank) ?? [];
  const place = ({ id }) => (order.includes(id) ? order.indexOf(id) : order.length);
  const inDanger = standings.filter(([, verdict]) => verdict === "act").map(([tank]) => tank).sort((one, other) => place(one) - place(other));
  const line = here.find("#round-first");
  line.hidden = !inDanger.length;
  const links = inDanger.flatMap((tank, at) => [at ? ", then " : "", element("a", { href: new URL(`shelf/tank/#${tank.id}`, here.root).href, textContent: called(tank) })]);
  const words = ["Animals may be in danger. Go there before you walk the round: ", ...links, "."];
  if (line.textContent !== words.map((word) => word.textContent ?? word).join("")) line.replaceChildren(...words);
}

function doneToday(ticks) {
  return ticks?.day === day() ? ticks.done : [];
}

/** How much is left today, and the week's minutes. Nothing is called done before today was worked out. */
function weekWords(round, left) {
  const minutes = round?.minutes_week;
  const week = minutes === undefined || minutes === null ? "" : ` About ${Math.round(minutes)} minutes this week.`;
  const today = !isOfToday(round) ? NOT_YET : left ? `${left} to do today.` : "All done for today.";
  return `${today}${week}`;
}

function isOfToday(round) {
  return round?.day === day();
}

/** One tank of the round, with its tasks of today. */
async function stop(here, tank, round, done, tanks, at) {
  const standing = await keptStanding(here.store, tank);
  const tasks = (isOfToday(round) ? round.today : [])?.filter((one) => one.tank === tank.id) ?? [];
  const rows = tasks.map((one) => task(here, tank, one, done));
  const log = tap("Log", () => openLog(tank), { name: `Log: ${called(tank)}` });
  const name = element("a", { href: new URL(`shelf/tank/#${tank.id}`, here.root).href, textContent: called(tank) });
  const head = element("div", { className: "round-head" }, element("h2", {}, name), sign(standing?.outputs?.verdict), mover(here, tanks, at, -1), mover(here, tanks, at, 1));
  const list = rows.length ? element("ul", {}, ...rows) : element("p", { className: "hint", textContent: isOfToday(round) ? "Nothing due. A look: do all animals show themselves and eat?" : NOT_YET });
  return element("li", {}, head, list, log);
}

function task(here, tank, { task: words, minutes }, done) {
  const key = `${tank.id} ${words}`;
  const box = element("input", { type: "checkbox", checked: done.includes(key) });
  box.dataset.key = key;
  box.onchange = () => {
    const { checked } = box;
    return attempt(here, () => here.store.changeSetting(TICKS, (ticks) => {
      const before = doneToday(ticks).filter((one) => one !== key);
      return { day: day(), done: checked ? [...before, key] : before };
    }));
  };
  const minutesWords = minutes ? `${Math.round(minutes)} min` : "";
  return element("li", {}, element("label", { className: "tick" }, box, element("span", { textContent: words }), element("small", { textContent: minutesWords })));
}

function mover(here, tanks, at, by) {
  const button = element("button", { type: "button", className: "step", textContent: by < 0 ? "↑" : "↓", disabled: !tanks[at + by] });
  button.setAttribute("aria-label", `${by < 0 ? "Earlier" : "Later"} in the walk: ${called(tanks[at])}`);
  button.onclick = async () => {
    const ids = tanks.map((one) => one.id);
    [ids[at], ids[at + by]] = [ids[at + by], ids[at]];
    const { top } = button.getBoundingClientRect();
    await attempt(here, () => here.store.orderTanks(ids));
    // The tank stays under the thumb: a second tap moves it on, and no other.
    scrollBy(0, (twinOf(button, here.box)?.getBoundingClientRect().top ?? top) - top);
  };
  return button;
}
