// Keeps a calculation on this device, or shares the address that opens it.

import { element } from "./paint.js";
import { called, shelf, tankHere } from "./shelf/shelf-start.js";
import { shareLink } from "./shelf/share.js";

export function openKeep(here) {
  const done = here.place.querySelector("#done");
  const names = here.place.querySelector("#keep-names");
  offerTanks(names, here.place.querySelector("#keep-tank"));
  here.place.querySelector("#share").onclick = () => share(done);
  here.place.querySelector("#keep").onclick = async () => {
    done.textContent = await keepAnswer(here);
    offerTanks(names);
  };
}

/** The names that a calculation can be kept under; the tank that the keeper stands at shows through the empty field. */
export async function offerTanks(names, field) {
  const store = await shelf().catch(() => null);
  if (!store) return;
  const [tanks, kept, here] = await Promise.all([store.tanks(), store.kept(), tankHere()]);
  const all = new Set([...tanks.map((one) => one.name), ...kept.map((one) => one.tank)]);
  names.replaceChildren(...[...all].map((value) => element("option", { value })));
  if (field && here) field.placeholder = here.name;
}

/** Keep the answer that stands; returns what came of it in words. */
async function keepAnswer(here) {
  if (!here.reply) return "There is no answer to keep yet.";
  const { lines } = here.reply.painted;
  const title = document.querySelector("h1").textContent;
  return keepFor(here.place.querySelector("#keep-tank").value.trim(), { calculator: here.name, title, address: location.search, lines });
}

/** Keep something under a tank's name; without one, that of the tank here. */
export async function keepFor(name, calculation) {
  try {
    const here = await tankHere();
    const tank = name || here?.name || "My tank";
    await (await shelf()).keep({ tank, ...calculation });
    return `Kept for ${name || !here ? tank : called(here)}, on this device.`;
  } catch (wrong) {
    return `Not kept: ${wrong.message} Share the link instead.`;
  }
}

export async function share(done, what = "calculation") {
  const came = await shareLink(document.title, location.href);
  if (came === "copied") done.textContent = `The link is on the clipboard. It opens this ${what}.`;
  else if (came !== "shared") done.textContent = `Copy the address of this page: ${location.href}`;
}
