// On a plant's page: whether a list of the keeper's place names it. The place is asked once, for all pages.

import { choosePlace, chosenPlace } from "./device-choices.js";

export function open() {
  const cell = document.querySelector("#in-my-place");
  const choice = cell.querySelector("select");
  const show = () => {
    const link = cell.querySelector("a");
    link.textContent = choice.selectedOptions[0]?.dataset.says ?? "";
    link.hidden = !link.textContent;
  };
  choice.value = chosenPlace();
  if (!choice.value) choice.value = "";
  choice.onchange = () => {
    choosePlace(choice.value);
    show();
  };
  /** @type {HTMLElement} */ (cell).hidden = false;
  show();
}
