// The kit of a reading: the steps that it can tell apart, chosen once and kept on this device.

import { element } from "../paint.js";
import { askValue } from "./log-value.js";
import { tap, taps } from "./sheet.js";

/** A folded part that says which kit is used, and lets another be chosen. */
export function kitPart(here, what) {
  const kits = what.kits ?? [];
  const words = element("summary", { textContent: "The kit and its steps" });
  const list = element("input", { id: "kit-steps", autocomplete: "off", inputMode: "decimal" });
  const keep = async (kit) => {
    const all = (await here.store.setting("kits")) ?? {};
    await here.store.saveSetting("kits", { ...all, [what.what]: kit });
    await askValue(here);
  };
  const own = tap("Keep these steps", () => {
    const steps = list.value.split(/[\s;]+/).map((one) => Number(one.replace(",", "."))).filter((one) => Number.isFinite(one) && one >= (what.low ?? 0) && one <= (what.high ?? Infinity));
    if (steps.length > 1) keep({ unit: what.unit, steps: [...new Set(steps)].sort((one, other) => one - other) });
    else list.focus();
  });
  const offered = kits.length ? [taps("Its scale", kits.map((kit) => tap(kit.label, () => keep(kit))))] : [];
  const label = element("label", { htmlFor: "kit-steps", textContent: `The figures on your kit's card${what.unit ? `, in ${what.unit}` : ""}, a space between` });
  return element("details", { className: "taps-part kit" }, words, ...offered, label, list, own);
}
