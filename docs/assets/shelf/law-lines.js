// Lines of the law for where the keeper lives are marked, and said first.

import { called, table } from "./shelf-start.js";
import { element } from "../paint.js";

/** Mark the links to the lists of the tank's place on this page, and say whose place it is. */
export async function markLaw(tank) {
  /** @type {any[]} */
  const links = [...document.querySelectorAll('#main a[href*="rules/"]')];
  for (const old of document.querySelectorAll(".law-here")) old.remove();
  for (const old of document.querySelectorAll(".law-mine")) old.classList.remove("law-mine");
  const place = tank?.place;
  if (!place || !links.length) return;
  choosePlaceOf(place);
  const mine = links.filter((link) => new URL(link.href).pathname.endsWith(`/rules/${place}/`));
  for (const link of mine) link.closest("li")?.classList.add("law-mine");
  const section = document.querySelector("#law");
  if (!section) return;
  const { tank: fields } = await table("fields");
  const words = placeWords(fields, place);
  const inLaw = mine.filter((link) => section.compareDocumentPosition(link) & Node.DOCUMENT_POSITION_FOLLOWING);
  const text = inLaw.length ? `Where ${called(tank)} stands (${words}) it is named below; those lines are marked.` : `Where ${called(tank)} stands (${words}) we did not find it on a list that we read.`;
  section.after(element("p", { className: "law-here", textContent: `${text} From ${called(tank)}.` }));
}

/** A plant's page asks for the place; what the tank knows is not asked twice. */
function choosePlaceOf(place) {
  /** @type {HTMLSelectElement | null} */
  const choice = document.querySelector("#my-place");
  if (!choice || choice.value === place) return;
  choice.value = place;
  choice.dispatchEvent(new Event("change"));
}

function placeWords(fields, place) {
  const { choices } = fields.find((one) => one.key === "place");
  return choices.find((one) => one.key === place)?.label ?? place; // a newer file may name a place that we do not know
}
