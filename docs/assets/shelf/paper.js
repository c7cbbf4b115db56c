// A tank on paper: a card to stick to it, and a sheet for whoever feeds during a holiday. All lines can be changed.

import { element } from "../paint.js";
import { called, day, dayInWords, said, shelf, table } from "./opened.js";
import { at, flat } from "./tank-fields.js";
import { nameOf, openNames } from "./names.js";
import { tankCode } from "./qr.js";
import { keptStanding } from "./standings.js";

const HOLIDAY_DAYS = 14;

let page;

export async function open(root) {
  const box = document.querySelector("#paper");
  const here = { root, box, find: (name) => box.querySelector(name) };
  page = here;
  addEventListener("hashchange", () => page === here && box.isConnected && show(here));
  for (const button of box.querySelectorAll("[data-sheet]")) button.onclick = () => choose(here, button.dataset.sheet);
  here.find("#paper-print").onclick = () => print();
  try {
    here.store = await shelf();
  } catch (wrong) {
    box.hidden = false;
    return said(document.querySelector("#paper-title"), wrong);
  }
  return show(here);
}

function choose(here, sheet) {
  for (const button of here.box.querySelectorAll("[data-sheet]")) button.setAttribute("aria-pressed", String(button.dataset.sheet === sheet));
  here.find("#paper-card").hidden = sheet !== "card";
  here.find("#paper-holiday").hidden = sheet !== "holiday";
}

async function show(here) {
  const id = decodeURIComponent(location.hash.slice(1)) || (await here.store.chosen());
  const tank = id && (await here.store.tank(id));
  here.box.hidden = !tank;
  document.querySelector("#paper-title").textContent = tank ? `On paper: ${called(tank)}` : "No such tank on this device";
  if (!tank) return;
  const [fields, standing] = await Promise.all([table("fields"), keptStanding(here.store, tank), openNames()]);
  await card(here, tank, fields, standing);
  holiday(here, tank, standing);
}

/** A line that can be changed before it is printed. */
function line(tag, text, className = "") {
  const made = element(tag, { textContent: text, className });
  made.contentEditable = "plaintext-only";
  made.setAttribute("role", "textbox");
  made.setAttribute("aria-label", text.slice(0, 40) || "blank line");
  return made;
}

function living(tank) {
  const animals = (tank.animals ?? []).map((one) => `${one.count ?? "some"} ${nameOf("animals", one.animal)}`);
  const plants = (tank.plants ?? []).map((one) => nameOf("plants", one.plant));
  return { animals: animals.join(", ") || "not said", plants: plants.join(", ") || "not said" };
}

/** The card: who lives in it, feed, the figures that the tank is kept at, and the code of its record. */
async function card(here, tank, fields, standing) {
  const { animals, plants } = living(tank);
  const figures = flat(fields.tank).filter((one) => one.kind === "number" && at(tank, one.path) !== null).map((one) => `${one.label} ${at(tank, one.path)} ${one.unit ?? ""}`.trim());
  const rows = [["Animals", animals], ["Plants", plants], ["Kept at", figures.join(" · ") || "no figures said"], ["Limits", limits(standing) || "not worked out yet"]];
  const code = element("div", { className: "paper-code" });
  here.find("#paper-card").replaceChildren(
    element("header", { className: "paper-head" }, line("h2", called(tank)), code),
    ...rows.map(([name, text]) => element("p", {}, element("b", { textContent: `${name}: ` }), line("span", text))),
    line("p", `As of ${dayInWords(day())}`, "hint"),
  );
  code.innerHTML = (await tankCode(tank, new URL("shelf/", here.root).href)).svg; // drawn by qr.js, the name in it escaped
}

function limits(standing) {
  return standing?.outputs?.limits?.map((one) => one.sentence ?? one).join(" ") ?? "";
}

/** The holiday sheet: what to do on which day, what to look at, what never to do, whom to call. */
function holiday(here, tank, standing) {
  const { animals } = living(tank);
  const feed = tank.feed_g_week === null || tank.feed_g_week === undefined ? "" : ` (${tank.feed_g_week} g in a whole week at home)`;
  const days = Array.from({ length: HOLIDAY_DAYS }, (_, at) => element("tr", {}, line("td", dayInWords(day(-at))), line("td", ""), line("td", ""), element("td", { className: "paper-box" })));
  const head = element("tr", {}, ...["Day", "Feed, in level spoons", "Look", "Done"].map((text) => element("th", { scope: "col", textContent: text })));
  const due = (standing?.outputs?.due ?? []).map((one) => `${one.task}, ${dayInWords(one.on)}`).join("; ");
  here.find("#paper-holiday").replaceChildren(
    line("h2", `While we are away: ${called(tank)}`),
    element("p", {}, element("b", { textContent: "Who lives here: " }), line("span", animals)),
    element("p", {}, element("b", { textContent: "A portion: " }), line("span", `______ level spoons${feed}. Less is better than more: a day without food harms no grown fish.`)),
    element("table", {}, element("thead", {}, head), element("tbody", {}, ...days)),
    element("p", {}, element("b", { textContent: "Look at: " }), line("span", "Is the light on in the day? Does the filter run? Is the water as warm as always? Does anyone gasp at the surface or lie down?")),
    element("p", {}, element("b", { textContent: "Never: " }), line("span", "Never add food for a day that was missed. Never change water, clean, dose or move anything unless we say so on the telephone. Never reach into the water with anything plugged in: pull the plugs first.")),
    element("p", {}, element("b", { textContent: "Falls due meanwhile, and can wait for us: " }), line("span", due || "nothing that we know of")),
    element("p", {}, element("b", { textContent: "Call: " }), line("span", "______________________  or the vet: ______________________")),
  );
}
