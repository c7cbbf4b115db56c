// Small drawings of signs, from the one file that holds them; the page says which there are. Words stand beside each.

import { smallPicture } from "./paint.js";

/** The drawing of a finding, or nothing where it has none. */
export function signPicture(here, finding) {
  const drawn = here.place.dataset.drawn.split(" ");
  return drawn.includes(finding) ? [smallPicture(here.root, "signs.svg", finding)] : [];
}

/** The most telling sign of a problem, as its own page shows it first. */
export function problemPicture(here, problem) {
  const pair = here.place.dataset.shows.split(" ").find((one) => one.startsWith(`${problem}:`));
  return pair ? signPicture(here, pair.split(":")[1]) : [];
}
