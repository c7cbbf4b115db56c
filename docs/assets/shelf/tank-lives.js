// What lives in a tank, on its page: plants with when they are next due, animals with their number, and both in the form.

import { element } from "../paint.js";
import { livesOf } from "./occupants.js";
import { nameOf } from "./names.js";
import { dayInWords, table } from "./shelf-start.js";
import { livingList } from "./tank-living.js";
import { inUnits } from "./units.js";

/** Each kind leads to its page. */
export function paintLives(here, tank, fields) {
  const wet = fields.find((one) => one.key === "plants").fields.find((one) => one.key === "wet_g");

  const { plants, animals } = livesOf(tank, here.standing);
  const due = here.standing?.outputs?.due ?? [];
  const row = (list, key, amount) => {
    const link = element("a", { href: new URL(`${list}/${key}/`, here.root).href, textContent: nameOf(list, key) });
    const next = due.find((one) => one.task.startsWith("trim") && one.task.includes(nameOf(list, key)));
    return element("li", {}, link, ` ${amount}`, next ? `, next trim ${dayInWords(next.on)}` : "");
  };
  const list = (name, rows, words) => here.find(name).replaceChildren(...(rows.length ? rows : [element("li", { className: "hint", textContent: words })]));
  here.find("#tank-lives summary span").textContent = plants.length + animals.length ? `: ${kinds(plants, "plant")}, ${kinds(animals, "animal")}` : "";
  list("#tank-plants", plants.map((one) => row("plants", one.plant, figure(inUnits(wet, one.wet_g), "wet", "mass not said"))), "No plants said.");
  list("#tank-animals", animals.map((one) => row("animals", one.animal, figure(one.count ?? "", "", "number not said"))), "No animals said.");
}

function kinds(list, of) {
  return `${list.length || "no"} ${list.length === 1 ? "kind" : "kinds"} of ${of}`;
}

function figure(value, unit, none) {
  return value === "" ? none : `${value} ${unit}`.trim();
}

/** The lists of the form as they stand now; one in which the keeper is at work stays. */
export async function listsAnew(here, tank, changed) {
  const { tank: fields } = await table("fields");
  for (const box of here.find("#tank-form").querySelectorAll("[data-list]")) {
    const one = fields.find(({ key }) => key === box.dataset.list);
    if (!box.contains(document.activeElement)) box.replaceWith(livingList(tank, one, changed, livesOf(tank, here.standing)[one.key]));
  }
}
