// What a page of the book says of the tank here: its place's lines of the law, and that its calculators fill themselves.

import { element } from "../paint.js";
import { rememberLead } from "./lead.js";
import { called, tankHere } from "./shelf-start.js";
import { markLaw } from "./law-lines.js";
import { onSwitch } from "./switch.js";

const TO_CALCULATORS = '#main .cards a[href*="calculators/"][href*="?"], #main p a[href*="calculators/"][href*="?"], #main .steps a[href*="calculators/"], #main .worked a[href*="calculators/"]';

export async function openLines() {
  if (document.querySelector("#calculator")) return;
  await lines();
  if (!document.querySelector("#diagnosis-at-tank, #identify-at-tank, #compare")) onSwitch(lines);
}

async function lines() {
  const tank = await tankHere().catch(() => null);
  for (const old of document.querySelectorAll(".sums-here")) old.remove();
  await markLaw(tank);
  const links = [...document.querySelectorAll(TO_CALCULATORS)];
  if (!tank || !links.length) return;
  for (const link of links) link.onclick = () => rememberLead(/** @type {HTMLAnchorElement} */ (link).href);
  const first = links[0].closest(".cards, p, .steps, .worked");
  first?.before(element("p", { className: "from-tank sums-here", textContent: `What you work out from here is filled from ${called(tank)}.` }));
}
