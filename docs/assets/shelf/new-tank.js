// A tank in a minute: its name, water, age, who lives in it, two plants. All but the name may stay blank.

import { element } from "../paint.js";
import { chosenUnits } from "../device-choices.js";
import { day, said, shelf, table } from "./shelf-start.js";
import { finder } from "./log-which.js";
import { nameOf, neverOf, openNames } from "./names.js";
import { tap } from "./sheet.js";
import { living } from "./tank-living.js";
import { entered, withMoment } from "./dated-values.js";
import { fieldsOf, flat } from "./tank-fields.js";
import { showTroubles } from "./trouble-line.js";
import { openUnits } from "./units-choice.js";
import { stored, unitOf, written } from "./units.js";

const MOST_OFFERED = 12;

export async function open(root) {
  const form = document.querySelector("#new-tank");
  const here = { root, form, tank: {} };
  form.hidden = false;
  pressed(form.querySelector("#minute-age"), ({ days }) => { set(here, "flooded_on", days === undefined ? null : day(Number(days))); });
  form.onsubmit = (event) => {
    event.preventDefault();
    put(here);
  };
  form.querySelector("#tank-name").focus();
  const [store, fields, demo] = await Promise.all([shelf(), table("fields"), table("demo"), openNames()]).catch((wrong) => {
    said(form.querySelector("#new-said"), wrong);
    return [];
  });
  if (!store) return;
  const own = await store.tanks();
  const place = own.findLast((tank) => tank.place && !tank.demo)?.place; // said once for all tanks
  Object.assign(here, { store, fields, tanks: [...own, ...demo.tanks], tank: { ...here.tank, ...(place ? { place } : {}) } }); // what stands on the shelf already is likeliest
  showTroubles(store, form);
  openUnits(() => paint(here));
  paint(here);
}

/** All that has a unit, or names; what was filled in stays. */
function paint(here) {
  const { form, fields } = here;
  sizes(here);
  offer(here, { list: "animals", named: "animal", amount: "count" });
  offer(here, { list: "plants", named: "plant", amount: "wet_g" });
  here.animals();
  here.plants();
  const asked = new Set(["name", "animals", "plants"]); // above
  form.querySelector("#more-fields").replaceChildren(...fieldsOf(here.tank, fields.tank.filter((one) => !asked.has(one.key)), (path, value) => set(here, path, value)));
}

/** The waters of common tanks, to tap. */
function sizes(here) {
  const group = here.form.querySelector("#minute-size");
  const one = here.fields.tank.find(({ key }) => key === "net_l");
  const unit = unitOf(one);
  group.replaceChildren(...one.offered[chosenUnits()].map((size) => {
    const chip = element("button", { type: "button", textContent: `${size} ${unit.unit}` });
    chip.dataset.litres = String(stored(unit, size));
    return chip;
  }));
  pressed(group, ({ litres }) => set(here, "net_l", litres === undefined ? null : Number(litres)), ({ litres }) => Number(litres) === here.tank.net_l);
}

function set(here, path, value) {
  here.tank = entered(here.tank, path, value, here.fields ?? {});
  const entry = here.form.querySelector(`#more-fields [data-path="${path}"] input`);
  if (entry && entry !== document.activeElement) entry.value = writtenAt(here, path, value);
  if (path === "animals" || path === "plants") here[path]?.();
}

function writtenAt(here, path, value) {
  const one = flat(here.fields.tank).find((row) => row.path === path);
  return one ? written(one, unitOf(one), value) : (value ?? "");
}

/** Buttons of which one is pressed at most. */
function pressed(group, chosen, isChosen = (/** @type {DOMStringMap} */ _data) => false) {
  for (const button of group.querySelectorAll("button")) button.setAttribute("aria-pressed", String(isChosen(button.dataset)));
  group.onclick = ({ target }) => {
    const button = target.closest("button");
    if (!button) return;
    const on = button.getAttribute("aria-pressed") !== "true";
    for (const one of group.querySelectorAll("button")) one.setAttribute("aria-pressed", String(on && one === button));
    chosen(on ? button.dataset : {});
  };
}

/** The kinds that stand in other tanks, to tap; each that is chosen gets a row with its amount. */
function offer(here, { list, named, amount }) {
  const amountRow = here.fields.tank.find(({ key }) => key === list).fields.find(({ key }) => key === amount);
  const keys = [...new Set(here.tanks.flatMap((tank) => (tank[list] ?? []).map((row) => row[named])))].filter((key) => !neverOf(list, key)).slice(0, MOST_OFFERED);
  const rows = here.form.querySelector(`#chosen-${list}`);
  const chips = here.form.querySelector(`#minute-${list}`);
  const held = () => here.tank[list] ?? [];
  const paint = () => {
    rows.replaceChildren(...held().map((row, number) => living(row, { named, amount, row: amountRow }, list, (next) => set(here, list, next ? held().with(number, withMoment(next)) : held().toSpliced(number, 1)))));
    for (const chip of chips.querySelectorAll("button")) chip.setAttribute("aria-pressed", String(held().some((row) => row[named] === chip.dataset.key)));
  };
  here[list] = paint;
  const toggle = (key) => {
    const there = held().some((row) => row[named] === key);
    const fresh = withMoment({ [named]: key, [amount]: null, ...(list === "plants" ? { since: here.tank.flooded_on ?? day() } : {}) });
    set(here, list, there ? held().filter((row) => row[named] !== key) : [...held(), fresh]);
  };
  chips.replaceChildren(...keys.map((key) => {
    const chip = tap(nameOf(list, key), () => toggle(key), { pressed: false });
    chip.dataset.key = key;
    return chip;
  }));
  here.form.querySelector(`#find-${list}-box`).replaceChildren(finder(list, (key) => tap(nameOf(list, key), () => held().some((row) => row[named] === key) || toggle(key)), `find-${list}`));
}

async function put(here) {
  const name = here.form.querySelector("input#tank-name");
  const problem = here.form.querySelector("#tank-name-problem");
  const given = /** @type {HTMLInputElement} */ (name).value.trim();
  problem.hidden = Boolean(given);
  problem.textContent = given ? "" : "Give the tank a name; all else may stay blank.";
  if (!given) return name.focus();
  if (here.isPutting) return undefined; // a second tap before the page has gone is no second tank
  here.isPutting = true;
  try {
    const saved = await here.store.saveTank({ ...here.tank, name: given });
    await here.store.choose(saved.id);
    location.assign(new URL("shelf/", here.root).href);
  } catch (wrong) {
    here.isPutting = false;
    said(here.form.querySelector("#new-said"), wrong);
  }
  return undefined;
}
