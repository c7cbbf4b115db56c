// The plant of a diagnosis: typed by any of its names, or one of those that were chosen here before.

import { element } from "./paint.js";
import { chosenPlants, rememberPlant } from "./store.js";

/** Let the field work; `chosen` hears the record's key, or nothing. `show(key)` fills the field. */
export function openPlant(here, chosen) {
  const field = here.place.querySelector("#look-plant");
  const options = [...here.place.querySelectorAll("#look-plants option")];
  const nameOf = (key) => options.find((one) => one.dataset.key === key)?.value ?? "";
  const mine = here.place.querySelector("#look-mine");
  const list = () => {
    const known = chosenPlants().filter(nameOf);
    mine.hidden = !known.length;
    mine.replaceChildren(...known.map((key) => {
      const button = element("button", { type: "button", textContent: nameOf(key) });
      button.onclick = () => take(key);
      return button;
    }));
  };
  const take = (key) => {
    if (key) rememberPlant(key);
    list();
    chosen(key);
  };
  field.onchange = () => {
    const typed = field.value.trim().toLowerCase();
    const hit = options.find((one) => one.value.toLowerCase() === typed);
    hint(here, typed && !hit ? "No record has that name. The diagnosis goes on without it." : "Type any of its names.");
    take(hit?.dataset.key ?? "");
  };
  field.oninput = () => options.some((one) => one.value === field.value) && field.onchange();
  list();
  return { show: (key) => { if (document.activeElement !== field || key) field.value = nameOf(key); } };
}

function hint(here, text) {
  here.place.querySelector("#look-plant-hint").textContent = text;
}
