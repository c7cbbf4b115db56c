// What a page needs beyond its own script: loaded only where its place stands in the page, once each.

const PARTS = {
  "#calculator": () => import("./calculator.js"),
  "#photo": () => import("./photo.js"), // after the calculator, whose form it fills
  "#finder": () => import("./search.js"),
  "#stands-here": () => import("./shelf/home-stands.js"),
  "#moved": () => import("./shelf/moved-page.js"),
  "#board": () => import("./shelf/board.js"),
  "#new-tank": () => import("./shelf/new-tank.js"),
  "#tank-page": () => import("./shelf/tank-page.js"),
  "#a-third": () => import("./third.js"),
  "#round": () => import("./shelf/round.js"),
  "#paper": () => import("./shelf/paper.js"),
  "#plant-table": () => import("./plant-table.js"),
  "#compare": () => import("./compare.js"),
  "#my-place": () => import("./place.js"),
  "#diagnosis-at-tank": () => import("./diagnosis.js"),
  "#identify-at-tank": () => import("./identify.js"),
};

/** The places, in the order in which they are opened. */
export const PLACES = Object.keys(PARTS);

const loading = new Map();

/**
 * The part of a place. One that was loaded before is there without a wait for the browser, which would draw the page
 * first, and only then ask Python.
 * @returns {Promise<{open: (root: URL) => unknown, first?: (root: URL) => Promise<void>}>}
 */
export function partAt(place) {
  const known = loading.get(place);
  if (known) return known;
  const part = PARTS[place]();
  loading.set(place, part);
  part.catch(() => loading.delete(place)); // another try loads it anew
  return part;
}
