// Cuttings in handfuls: what a handful weighs is asked once.

import { element } from "../paint.js";
import { HANDFUL } from "./settings.js";
import { tap, taps } from "./sheet.js";
import { inUnits } from "./units.js";

const HANDFULS = [1, 2, 3, 4];
const WEIGHTS = [20, 30, 40, 50, 60, 80]; // grams, wet and shaken, to choose from
const OF = new Set(["trim", "thin", "plant"]);

/** Parts of the sheet for cuttings: handfuls where they are calibrated, or the way to do it. */
export async function handfulPart(here, write) {
  if (!OF.has(here.kind.kind)) return [];
  const [what] = here.kind.whats;
  const grams = await here.store.setting(HANDFUL);
  const calibrate = (heading) => taps(heading, WEIGHTS.map((one) => tap(inUnits(what, one), async () => {
    await here.store.saveSetting(HANDFUL, one);
    const part = await handfulPart(here, write);
    here.body.querySelector(".handfuls").replaceWith(...part);
  })));
  const box = element("div", { className: "handfuls" });
  if (!grams) {
    box.append(calibrate("A handful of yours weighs, wet and shaken: asked once"));
    return [box];
  }
  const words = (many) => (many === 1 ? "1 handful" : `${many} handfuls`);
  const again = element("details", { className: "kit" }, element("summary", { textContent: `A handful is ${inUnits(what, grams)}` }), calibrate("Weighed anew"));
  box.append(taps("In handfuls", HANDFULS.map((many) => tap(words(many), () => write(many * grams, words(many)), { small: inUnits(what, many * grams) }))), again);
  return [box];
}
