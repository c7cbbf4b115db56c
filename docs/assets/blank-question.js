// What a calculator's page asks while its form is blank: the worked example, in the units that this device reads.

import { chosenUnits } from "./device-choices.js";

/** A question of a form as Python has it; always with its parts in this order, so that two that are alike read alike. */
export function questionOf({ calculator, given, own, borrowed, address, given_in, units }) {
  return { calculator, given, own, borrowed, address, given_in, units };
}

/** What the page of a calculator will ask first where nothing fills its form. */
export function blankQuestion(calculator) {
  const units = chosenUnits();
  return questionOf({ calculator, given: {}, own: false, borrowed: undefined, address: {}, given_in: units, units });
}
