// The kit of a reading: the unit that it shows and the steps that it can tell apart, chosen once and kept on this device.

import { element } from "../paint.js";
import { chosenUnits } from "../device-choices.js";
import { table } from "./shelf-start.js";
import { KITS } from "./settings.js";
import { tap, taps } from "./sheet.js";
import { unitOf } from "./units.js";

/** The kit of a reading: {unit, label, factor, zero, step, chosen}; a figure of the log is (shown - zero) x factor. */
export async function kitOf(store, what) {
  const [kits, held] = await Promise.all([table("kits"), store.setting(KITS)]);
  const own = unitOf(what);
  const units = kits[what.what] ?? [{ ...own, unit: "", label: own.unit }];
  const usual = (chosenUnits() === "us" && units.find((one) => one.us)) || units[0];
  const chosen = held?.[what.what];
  return { step: own.steps[0], ...usual, ...chosen, units, chosen: Boolean(chosen) };
}

/** The unit as a button has room for it: what stands after the comma, or all. */
export function unitWords(kit) {
  return kit.units.length > 1 ? kit.label.split(", ").at(-1) : kit.label;
}

/**
 * A part that says which kit is used and lets another be chosen; open until it was chosen once. `hold` is called at the
 * tap and `again` once the kit is kept: between the two nothing may be saved, since the figures are the old kit's.
 * `say` tells why a kit could not be kept.
 */
export function kitPart(store, what, kit, { hold, say, again }) {
  const keep = async (changes) => {
    hold();
    const { unit, label, factor, zero, step } = { ...kit, ...changes };
    try {
      await store.changeSetting(KITS, (all) => ({ ...all, [what.what]: { unit, label, factor, zero, step } }));
    } catch (wrong) {
      say(wrong.message); // the kit stays as it was
    }
    await again();
  };
  const units = kit.units.map((one) => tap(one.label, () => keep(one), { pressed: one.unit === kit.unit }));
  const steps = unitOf(what).steps.map((one) => tap(String(one), () => keep({ step: one }), { pressed: one === kit.step, name: `Steps of ${one}` }));
  const words = element("summary", { textContent: `Your kit: ${kit.label ? `${kit.label}, ` : ""}in steps of ${kit.step}` });
  const parts = [kit.units.length > 1 ? taps("It reads", units) : "", taps("The smallest step that you can tell", steps)];
  return element("details", { className: "taps-part kit", open: !kit.chosen && kit.units.length > 1 }, words, ...parts);
}
