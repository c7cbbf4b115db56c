// The kit of a reading: the unit that it shows and the steps that it can tell apart, chosen once and kept on this device.

import { element } from "../paint.js";
import { table } from "./opened.js";
import { tap, taps } from "./sheet.js";

const SETTING = "kits";

/** The kit of a reading: {unit, label, factor, zero, step, chosen}; a figure of the log is (shown - zero) x factor. */
export async function kitOf(store, what) {
  const units = unitsOf(await table("kits"), what);
  const held = (await store.setting(SETTING))?.[what.what];
  return { ...units[0], step: what.steps?.[0] ?? 1, ...held, units, chosen: Boolean(held) };
}

function unitsOf(kits, what) {
  return kits[what.what] ?? [{ unit: "", label: what.unit, factor: 1, zero: 0 }];
}

/** A figure as the log holds it, and as the kit shows it. */
export function logged(kit, shown) {
  return Number(((shown - kit.zero) * kit.factor).toFixed(6)); // finer than what is shown, so that it comes back the same
}

export function shown(kit, value) {
  return tidy(value / kit.factor + kit.zero);
}

export function tidy(value) {
  return Number(value.toFixed(4));
}

/** The unit as a button has room for it: what stands after the comma, or all. */
export function unitWords(kit, what) {
  return kit.units.length > 1 ? kit.label.split(", ").at(-1) : what.unit;
}

/** A part that says which kit is used and lets another be chosen; open until it was chosen once. */
export function kitPart(store, what, kit, again) {
  const keep = async (changes) => {
    const all = (await store.setting(SETTING)) ?? {};
    const { unit, label, factor, zero, step } = { ...kit, ...changes };
    await store.saveSetting(SETTING, { ...all, [what.what]: { unit, label, factor, zero, step } });
    await again();
  };
  const units = kit.units.map((one) => tap(one.label, () => keep(one), { pressed: one.unit === kit.unit }));
  const steps = (what.steps ?? []).map((one) => tap(String(one), () => keep({ step: one }), { pressed: one === kit.step, name: `Steps of ${one}` }));
  const words = element("summary", { textContent: `Your kit: ${kit.label ? `${kit.label}, ` : ""}in steps of ${kit.step}` });
  const parts = [kit.units.length > 1 ? taps("It reads", units) : "", taps("The smallest step that you can tell", steps)];
  return element("details", { className: "taps-part kit", open: !kit.chosen && kit.units.length > 1 }, words, ...parts);
}
