// The value of an entry: the last five, those a step or more away, or a number between two large buttons.
// No keyboard is needed.

import { element } from "../paint.js";
import { called } from "./shelf-start.js";
import { figureKey, figureOf, keepFigure } from "./figure-draft.js";
import { handfulPart } from "./log-handful.js";
import { kitOf, kitPart, unitWords } from "./log-kit.js";
import { ofWhich } from "./log-of-which.js";
import { tap, taps } from "./sheet.js";
import { stepper, typedIn } from "./log-stepper.js";
import { shown, stored, storedWithin } from "./units.js";
import { upper } from "./words.js";

const STEPS_DOWN = 3;
const STEPS_UP = 8;
const COVER = "cover_percent";
const NEW_PARTS = "new-parts";

/** Ask for the value of `here.what`, or of the kind itself; `more(value)` makes further parts of the entry. */
export async function askValue(here, { more = (/** @type {number} */ _value) => ({}), sign = 1, heading = "", typed = "" } = {}) {
  const { kind, tank, store } = here;
  const what = here.what ?? kind.whats?.[0] ?? {};
  const kit = await kitOf(store, what);
  const unit = unitWords(kit);
  const name = heading || (kind.kind === "reading" || kind.of === "doses" ? upper(what.label) : upper(kind.label));
  here.name.textContent = `${name}: ${called(tank)}`;
  const which = ofWhich(here);
  const key = figureKey({ ...here, what }, heading);
  const held = figureOf(key);
  const before = !typed && held?.unit === unit ? held : null;
  const note = (/** @type {string} */ text) => {
    keepFigure(key, text, unit);
    here.unsaved = text ? { key, words: `${name} ${text} ${unit}`.trim() } : null;
  };
  if (typed || before) note(typed || before.text);
  const put = (value, words, text = "") => here.save({
    draft: key,
    what: which.chosen() ?? (what.what || null), value: sign * value, ...(text ? { text } : {}),
    ...(kind.kind === "reading" ? { step: stored({ ...kit, zero: 0 }, kit.step) } : {}),
    words: `${name} ${words}`, ...more(value),
  });
  const write = (figure) => put(storedWithin(what, kit, figure), `${figure} ${unit}`.trim());
  const last = (await store.lastValues(tank.id, kind.kind, what.what || undefined)).map((one) => shown(kit, Math.abs(one)));
  const button = (value) => tap(String(value), () => write(value), { name: `${name} ${value} ${unit}`.trim() });
  const known = [...new Set(last)];
  const first = here.edit?.value !== undefined && here.edit?.value !== null ? shown(kit, Math.abs(here.edit.value)) : known[0];
  const usual = shown(kit, what.last_default ?? 0);
  const base = first ?? usual;
  const limits = { low: sign < 0 || what.low < 0 ? 0 : shown(kit, what.low ?? 0), high: shown(kit, what.high ?? Infinity) };
  const near = scale(kit.us || kit.digits ? Math.round(base / kit.step) * kit.step : base, kit.step, limits).filter((one) => !known.includes(one) && (one !== 0 || kind.kind === "reading"));
  const parts = [which.part, known.length ? taps(`Logged last${unit ? `, ${unit}` : ""}`, known.map(button)) : "", taps(known.length ? "A few steps on" : `In ${unit || "steps"}`, near.map(button))];
  parts.push(stepper({ name, unit, limits, step: kit.step, first, usual, typed: typed || before?.text, time: before?.time }, write, note), ...(await handfulPart(here, (grams, words) => put(grams, words, words))));
  if (kind.kind === "thin") parts.push(coverInstead(here));
  if (what.what === COVER && !here.edit) parts.push(byPhoto(here));
  const box = element("div", { className: NEW_PARTS });
  if (kind.kind === "reading") parts.push(kitPart(store, what, kit, { hold: () => hold(box), say: here.say, again: () => askValue(here, { more, sign, heading, typed: typedIn(box.querySelector("#log-value")) }) }));
  box.append(...parts);
  here.body.querySelector(`.${NEW_PARTS}`)?.remove();
  here.show(box);
}

/** Nothing in a part can be tapped or typed any more: another comes in its place. */
function hold(box) {
  for (const control of box.querySelectorAll("button, input, select")) control.disabled = true;
}

/** Who cannot weigh what was thinned logs the cover that is left, a reading. */
function coverInstead(here) {
  const kind = here.fields.entries.find((one) => one.kind === "reading");
  const what = kind.whats.find((one) => one.what === COVER);
  return taps("Not weighed?", what ? [tap("Log the cover that is left", () => askValue(Object.assign(here, { kind, what })))] : []);
}

/** The cover can be counted in a photo: that page offers to log it for the tank that the keeper then stands at, this one. */
function byPhoto({ store, tank }) {
  const href = new URL("calculators/surface-cover/", new URL(document.body.dataset.root, location.href)).href;
  const link = element("a", { className: "tap", href, textContent: "Count it in a photo" });
  link.onclick = async (event) => {
    event.preventDefault();
    await store.choose(tank.id).catch(() => {}); // nothing can be kept: that page asks which tank it is
    location.assign(href);
  };
  return element("p", {}, link);
}

/** Figures a few steps around one, within its limits. */
function scale(base, step, { low, high }) {
  const many = Math.min(STEPS_DOWN, Math.floor((base - low) / step));
  const first = base - Math.max(0, many) * step;
  const all = Array.from({ length: STEPS_DOWN + STEPS_UP }, (_, at) => Number((first + at * step).toFixed(4)));
  return all.filter((one) => one >= low && one <= high);
}
