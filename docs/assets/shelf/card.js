// One tank's card on the board: verdict, picture of its last readings, what is due, and the way to log.

import { element } from "../paint.js";
import { called, dayInWords } from "./opened.js";
import { openLog } from "./log-sheet.js";
import { sign } from "./verdict.js";

const MOST_DUE = 3; // tasks that are named on a card

export function paintCard(here, tank, standing) {
  const found = standing?.outputs;
  const verdict = found?.verdict ?? "unknown";
  const card = element("li", { className: `tank-card stands-${verdict}` });
  card.dataset.tank = tank.id;
  const name = element("h2", {}, element("a", { href: new URL(`shelf/tank/#${tank.id}`, here.root).href, textContent: tank.name }));
  if (tank.demo) name.append(" ", element("small", { className: "demo", textContent: "demo" }));
  const log = element("button", { type: "button", textContent: "Log" });
  log.setAttribute("aria-label", `Log: ${called(tank)}`);
  log.onclick = () => openLog(tank);
  const sentence = found?.sentence ?? standing?.wrong ?? "Not worked out yet.";
  card.append(name, element("p", { className: "stands" }, sign(verdict), " ", sentence), ...picture(standing), dueLine(found), log);
  return card;
}

/** The small picture that Python painted of the last readings. */
function picture(standing) {
  if (!standing?.html) return [];
  const painted = new DOMParser().parseFromString(standing.html, "text/html");
  const small = painted.querySelector("svg.spark") ?? painted.querySelector(".plot > svg");
  if (!small) return [];
  const box = element("div", { className: "card-picture" });
  box.append(document.importNode(small, true));
  return [box];
}

function dueLine(found) {
  const line = element("p", { className: "due" });
  const today = found?.due?.filter((one) => one.late_days >= 0) ?? [];
  const next = found?.due?.[0];
  if (today.length) {
    line.append(element("b", { textContent: today.some((one) => one.late_days > 0) ? "Due" : "Due today" }), ` ${today.slice(0, MOST_DUE).map(task).join(", ")}`);
  } else if (next) line.textContent = `Next: ${task(next)}, ${dayInWords(next.on)}`;
  else if (found) line.textContent = "Nothing is due that we know of.";
  return line;
}

function task(one) {
  return one.late_days > 0 ? `${one.task} (${one.late_days} ${one.late_days === 1 ? "day" : "days"} late)` : one.task;
}
