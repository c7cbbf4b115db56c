// The choice of units, the same that calculators have, on the pages of the shelf whose forms show figures.

import { chosenUnits, chooseUnits } from "../device-choices.js";

/** Make the buttons of `#shelf-units` work; `changed` paints what stands in the page anew. */
export function openUnits(changed) {
  const buttons = [...document.querySelectorAll("#shelf-units button")];
  const press = () => {
    document.documentElement.dataset.units = chosenUnits();
    for (const one of buttons) one.setAttribute("aria-pressed", String(one.dataset.units === chosenUnits()));
  };
  for (const button of buttons) {
    button.onclick = () => {
      chooseUnits(button.dataset.units);
      press();
      requestAnimationFrame(() => setTimeout(changed)); // the tap is seen first
    };
  }
  press();
}
