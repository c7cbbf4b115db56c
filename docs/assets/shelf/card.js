// One tank's card on the board: verdict, picture of its last readings, what is due, the first plants, and the way to log.

import { element, thumb } from "../paint.js";
import { livesOf } from "./occupants.js";
import { called, day, dayInWords, shelf } from "./shelf-start.js";
import { spark } from "./spark.js";
import { besideSign, sign } from "./verdict.js";

const MOST_DUE = 2; // tasks that are named on a card
const MOST_DRAWN = 3; // plants

/** `minutes` are those that are due today, where they are known. */
export function paintCard(here, tank, standing, minutes) {
  const found = standing?.outputs;
  const verdict = found?.verdict ?? "unknown";
  const card = element("li", { className: `tank-card stands-${verdict}` });
  card.dataset.tank = tank.id;
  const name = element("h2", {}, element("a", { href: new URL(`shelf/tank/#${tank.id}`, here.root).href, textContent: tank.name }));
  if (tank.demo) name.append(" ", element("small", { className: "demo", textContent: "demo" }));
  const log = element("button", { type: "button", textContent: "Log" });
  log.setAttribute("aria-label", `Log: ${called(tank)}`);
  log.onclick = () => logFor(tank);
  const sentence = found?.sentence ?? standing?.wrong ?? "Not worked out yet.";
  card.append(name, element("p", { className: "stands" }, sign(verdict), " ", besideSign(sentence, verdict)), dueLine(found, minutes), ...spark(standing?.spark), ...drawnPlants(here, livesOf(tank, standing).plants), log);
  return card;
}

/** The tank's first plants in small, from the one file that holds all; the tank's page has their names in full. */
function drawnPlants({ root }, plants) {
  if (!plants.length) return [];
  const more = plants.length - MOST_DRAWN;
  const drawn = plants.slice(0, MOST_DRAWN).map(({ plant }) => plant);
  const line = element("p", { className: "card-plants" }, ...drawn.map((slug) => thumb(root, slug)), more > 0 ? ` +${more}` : "");
  line.setAttribute("role", "img");
  line.setAttribute("aria-label", `Plants: ${drawn.map(inWords).join(", ")}${more > 0 ? ` and ${more} more` : ""}`);
  return [line];
}

/** A record's key as a name: the names themselves may not have come yet. */
function inWords(slug) {
  return slug.charAt(0).toUpperCase() + slug.slice(1).replaceAll("-", " ");
}

/** The sheet for a tank as it stands in the log by now; the card may know its name alone. */
async function logFor({ id }) {
  const [{ openLog }, store] = await Promise.all([import("./log-sheet.js"), shelf()]);
  const tank = await store.tank(id);
  if (tank) await openLog(tank);
}

function dueLine(found, minutes) {
  const line = element("p", { className: "due" });
  const now = day();
  const today = found?.due.filter((one) => one.on <= now) ?? [];
  const next = found?.due.find((one) => one.on > now);
  if (today.length) {
    const more = today.length - MOST_DUE;
    const words = `${today.slice(0, MOST_DUE).map(task).join(", ")}${more > 0 ? ` and ${more} more` : ""}`;
    line.append(element("b", { textContent: today.some((one) => one.late_days > 0) ? "Due" : "Due today" }), ` ${words}${minutes ? `; about ${Math.round(minutes)} min` : ""}`);
  } else if (next) line.textContent = `Next: ${task(next)}, ${dayInWords(next.on)}`;
  else if (found) line.textContent = "Nothing is due that we know of.";
  return line;
}

function task(one) {
  return one.late_days > 0 ? `${one.task} (${one.late_days} ${one.late_days === 1 ? "day" : "days"} late)` : one.task;
}
