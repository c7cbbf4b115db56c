// A tank in a minute: its name, water, age, who lives in it, two plants. All but the name may stay blank.

import { element } from "../paint.js";
import { chosenUnits } from "../device-choices.js";
import { day, said, shelf, table } from "./shelf-start.js";
import { finder } from "./log-which.js";
import { nameOf, neverOf, openNames } from "./names.js";
import { draftTank, forgetTank, keepTank, typeAgain, typingIn } from "./new-tank-draft.js";
import { newId } from "./operations.js";
import { saidBelow, tap } from "./sheet.js";
import { living, showRows } from "./tank-living.js";
import { entered, withMoment } from "./dated-values.js";
import { fieldsOf, flat } from "./tank-fields.js";
import { showTroubles } from "./trouble-line.js";
import { openUnits } from "./units-choice.js";
import { stored, unitOf, written } from "./units.js";

const MOST_OFFERED = 12;

// A page that the browser kept whole comes back as it was left: one whose tank is on the shelf by now begins anew.
window.addEventListener("pageshow", ({ persisted }) => {
  if (persisted && document.querySelector("#new-tank[data-made]")) location.reload();
});

export async function open(root) {
  const form = document.querySelector("#new-tank");
  const draft = draftTank();
  /** @type {Record<string, any>} */
  const here = { root, form, ...begun(draft), name: form.querySelector("#tank-name") };
  form.hidden = false;
  here.name.value ||= draft?.name ?? "";
  here.ages = pressed(form.querySelector("#minute-age"), ({ days }) => set(here, "flooded_on", days === undefined ? null : day(Number(days))), ({ days }) => day(Number(days)) === here.tank.flooded_on);
  form.onsubmit = (event) => {
    event.preventDefault();
    put(here);
  };
  keepAsTyped(here);
  here.name.focus();
  const [store, fields, demo] = await Promise.all([shelf(), table("fields"), table("demo"), openNames()]).catch((wrong) => {
    said(form.querySelector("#new-said"), wrong);
    return [];
  });
  if (!store) return;
  const isMade = draft && (await store.tank(draft.id)); // the tab was closed between the shelf and this page
  const own = await store.tanks();
  const place = own.findLast((tank) => tank.place && !tank.demo)?.place; // said once for all tanks
  Object.assign(here, { store, fields, place, tanks: [...own, ...demo.tanks] }); // what stands on the shelf already is likeliest
  showTroubles(store, form);
  openUnits(() => paint(here));
  if (isMade) return afresh(here);
  if (place) here.tank = { place, ...here.tank };
  paint(here);
  typeAgain(form, draft?.typing);
  if (draft) sayDraft(here);
}

/** What a form begins with: a draft, or nothing but the id that its tank will have. */
function begun(draft) {
  return { id: draft?.id ?? newId(), tank: draft?.tank ?? {}, typing: draft?.typing ?? null };
}

/** Keep all that is filled in, and of the field that is being typed in what stands there. */
function keepAsTyped(here) {
  here.form.oninput = ({ target }) => {
    if (target !== here.name) here.typing = typingIn(target);
    keep(here);
  };
  here.form.onchange = ({ target }) => {
    if (target.getAttribute("aria-invalid") !== "true") here.typing = null; // it holds now
    keep(here);
  };
}

function keep(here) {
  if (here.form.dataset.made === undefined) keepTank({ id: here.id, name: here.name.value, tank: here.tank, typing: here.typing }, here.place);
}

/** Say that what stands there was filled in before; a tap begins anew, and can be taken back. */
function sayDraft(here) {
  const line = here.form.querySelector("#new-draft");
  line.hidden = false;
  line.querySelector("button").onclick = () => {
    const before = { name: here.name.value, ...begun(here) };
    afresh(here);
    saidBelow("Begun afresh.", () => {
      const { name, ...rest } = before;
      Object.assign(here, rest);
      here.name.value = name;
      paint(here);
      keep(here);
      sayDraft(here);
    });
  };
}

function afresh(here) {
  forgetTank();
  Object.assign(here, begun(null));
  if (here.place) here.tank = { place: here.place };
  here.name.value = "";
  here.form.querySelector("#new-draft").hidden = true;
  paint(here);
  here.name.focus();
}

/** All that has a unit, or names; what was filled in stays. */
function paint(here) {
  const { form, fields } = here;
  sizes(here);
  offer(here, { list: "animals", named: "animal", amount: "count" });
  offer(here, { list: "plants", named: "plant", amount: "wet_g" });
  here.ages();
  here.animals(true);
  here.plants(true);
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
  here.sizes = pressed(group, ({ litres }) => set(here, "net_l", litres === undefined ? null : Number(litres)), ({ litres }) => Number(litres) === here.tank.net_l);
}

function set(here, path, value) {
  here.tank = entered(here.tank, path, value, here.fields ?? {});
  const entry = here.form.querySelector(`#more-fields [data-path="${path}"] input`);
  if (entry && entry !== document.activeElement) entry.value = writtenAt(here, path, value);
  if (path === "animals" || path === "plants") here[path]?.();
  if (path === "flooded_on") here.ages();
  if (path === "net_l") here.sizes();
  keep(here);
}

function writtenAt(here, path, value) {
  const one = flat(here.fields.tank).find((row) => row.path === path);
  return one ? written(one, unitOf(one), value) : (value ?? "");
}

/** Buttons of which one is pressed at most; what comes back presses the one that is chosen now. */
function pressed(group, chosen, isChosen) {
  const show = () => {
    for (const button of group.querySelectorAll("button")) button.setAttribute("aria-pressed", String(isChosen(button.dataset)));
  };
  group.onclick = ({ target }) => {
    const button = target.closest("button");
    if (!button) return;
    chosen(button.getAttribute("aria-pressed") === "true" ? {} : button.dataset);
    show();
  };
  show();
  return show;
}

/** The kinds that stand in other tanks, to tap; each that is chosen gets a row with its amount. */
function offer(here, { list, named, amount }) {
  const amountRow = here.fields.tank.find(({ key }) => key === list).fields.find(({ key }) => key === amount);
  const keys = [...new Set(here.tanks.flatMap((tank) => (tank[list] ?? []).map((row) => row[named])))].filter((key) => !neverOf(list, key)).slice(0, MOST_OFFERED);
  const rows = here.form.querySelector(`#chosen-${list}`);
  const chips = here.form.querySelector(`#minute-${list}`);
  const held = () => here.tank[list] ?? [];
  const paint = (whole = false) => {
    showRows(rows, held().map((row) => row[named]), whole, (number) => living(held()[number], { named, amount, row: amountRow }, list, (next) => set(here, list, next ? held().with(number, withMoment(next)) : held().toSpliced(number, 1))));
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
  const { name } = here;
  const problem = here.form.querySelector("#tank-name-problem");
  const given = name.value.trim();
  problem.hidden = Boolean(given);
  problem.textContent = given ? "" : "Give the tank a name; all else may stay blank.";
  if (!given) return name.focus();
  if (here.isPutting) return undefined; // a second tap before the page has gone is no second tank
  here.isPutting = true;
  try {
    const saved = await here.store.saveTank({ ...here.tank, id: here.id, name: given });
    here.form.dataset.made = "";
    forgetTank();
    await here.store.choose(saved.id);
    location.assign(new URL("shelf/", here.root).href);
  } catch (wrong) {
    here.isPutting = false;
    said(here.form.querySelector("#new-said"), wrong);
  }
  return undefined;
}
