// The plant of a diagnosis: typed by any of its names, or one of those that were chosen here before.

import { element } from "./paint.js";
import { chosenPlants, rememberPlant } from "./device-choices.js";

const MOST_MEANT = 3; // names offered after a slip

/** Let the field work; `chosen` hears the record's key, or nothing. `show(key)` fills the field. */
export function openPlant(here, chosen) {
  const field = here.place.querySelector("#diagnosis-plant");
  const options = [...here.place.querySelectorAll("#diagnosis-plants option")];
  const nameOf = (key) => options.find((one) => one.dataset.key === key)?.value ?? "";
  const mine = here.place.querySelector("#diagnosis-mine");
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
    offer(here, typed && !hit ? typed : "", nameOf, take);
    take(hit?.dataset.key ?? "");
  };
  field.oninput = () => options.some((one) => one.value === field.value) && field.onchange();
  list();
  return { show: (key) => { if (document.activeElement !== field || key) field.value = nameOf(key); } };
}

/** After a slip of the finger: the plants that may have been meant, to tap. */
async function offer(here, typed, nameOf, take) {
  const box = here.place.querySelector("#diagnosis-meant");
  box.hidden = true;
  if (!typed) return;
  const { openIndex, search } = await import("./finder.js");
  await openIndex(here.root);
  const near = search(typed).map(({ address }) => /^plants\/([^/]+)\/$/.exec(address)?.[1]).filter((key) => key && nameOf(key)).slice(0, MOST_MEANT);
  if (!near.length) return;
  hint(here, "No record has just that name. Tap the one you mean; until then the diagnosis goes on without it.");
  box.replaceChildren(...near.map((key) => {
    const button = element("button", { type: "button", textContent: nameOf(key) });
    button.onclick = () => {
      box.hidden = true;
      hint(here, "Type any of its names.");
      take(key);
    };
    return button;
  }));
  box.hidden = false;
}

function hint(here, text) {
  here.place.querySelector("#diagnosis-plant-hint").textContent = text;
}
