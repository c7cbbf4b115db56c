// A tank that was begun and is not on the shelf yet, kept for this tab: neither the way back nor a reload loses it.

import { chosenUnits } from "../device-choices.js";
import { forTab, keepForTab } from "./for-tab.js";

const DRAFT = "mulmbook-new-tank";

/**
 * What was filled in and not put on the shelf, or null: the id that the tank will have, its name, its other values, and
 * the field that was being typed in, `{field, text, units}`.
 * @returns {{id: string, name: string, tank: Record<string, any>, typing: {field: string, text: string, units: string} | null} | null}
 */
export function draftTank() {
  return forTab(DRAFT);
}

/** Keep what stands in the form; nothing, where nobody has filled in anything. `place` stands there by itself. */
export function keepTank({ id, name, tank, typing }, place) {
  const { place: said, entered, ...rest } = tank;
  const blank = !name.trim() && !typing && isBlank(rest) && (said ?? null) === (place ?? null);
  keepForTab(DRAFT, blank ? null : { id, name, tank, typing });
}

export function forgetTank() {
  keepForTab(DRAFT, null);
}

/** Whether a value says nothing: a list of no rows, a group of no figures. */
function isBlank(value) {
  return typeof value === "object" && value !== null ? Object.values(value).every(isBlank) : (value ?? "") === "";
}

/** A field of the form by a name that it has after a reload too; null for one that only searches. */
function nameOf(field) {
  return field.type === "search" ? null : field.id || field.getAttribute("aria-label");
}

/** What is being typed in a field and holds only once it is left. */
export function typingIn(field) {
  const name = field.matches("input") && nameOf(field);
  return name ? { field: name, text: field.value, units: chosenUnits() } : null;
}

/** Put back what was being typed, as if the field were left now; not where it would count in another unit. */
export function typeAgain(form, typing) {
  if (!typing || typing.units !== chosenUnits()) return;
  const field = [...form.querySelectorAll("input")].find((one) => nameOf(one) === typing.field);
  if (!field) return;
  field.value = typing.text;
  field.dispatchEvent(new Event("change", { bubbles: true }));
  field.closest("details")?.setAttribute("open", "");
}
