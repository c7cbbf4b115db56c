// The small picture of a tank's last readings: the points that Python gave, placed as they are.

import { element } from "../paint.js";

const SVG = "http://www.w3.org/2000/svg";
const ROOM = 0.15; // of the height, above and below
const MOST_POINTS = 12; // the last ones

/** A picture with its figures in words; nothing where there are too few readings. */
export function spark(drawn) {
  if (!drawn || drawn.x.length < 2) return [];
  const x = drawn.x.slice(-MOST_POINTS);
  const y = drawn.y.slice(-MOST_POINTS).map((one) => -one); // SVG counts downwards
  const [left, top] = [Math.min(...x), Math.min(...y)];
  const [width, height] = [Math.max(...x) - left || 1, Math.max(...y) - top || 1];
  const svg = document.createElementNS(SVG, "svg");
  svg.setAttribute("viewBox", [left - width * 0.04, top - height * ROOM, width * 1.08, height * (1 + 2 * ROOM)].join(" "));
  svg.setAttribute("preserveAspectRatio", "none");
  svg.setAttribute("aria-hidden", "true"); // the words beside it say the latest
  svg.append(path(`M${x.map((one, at) => `${one} ${y[at]}`).join("L")}`, "spark-line"), path(x.map((one, at) => `M${one} ${y[at]}h0`).join(""), "spark-dots"));
  const latest = element("span", {}, `${drawn.label} `, element("b", { textContent: `${-y.at(-1)} ${drawn.unit}`.trim() }));
  const box = element("div", { className: "card-picture" });
  box.append(svg, latest);
  return [box];
}

function path(d, name) {
  const made = document.createElementNS(SVG, "path");
  made.setAttribute("d", d);
  made.setAttribute("class", name);
  return made;
}
