// Keeps a calculation on this device, or shares the address that opens it.

import { element } from "./paint.js";
import { keep, kept } from "./store.js";

export function openKeep(here) {
  const done = here.place.querySelector("#done");
  const names = here.place.querySelector("#keep-names");
  const list = () => names.replaceChildren(...[...new Set(kept().map((one) => one.tank))].map((value) => element("option", { value })));
  list();
  here.place.querySelector("#share").onclick = () => share(done);
  here.place.querySelector("#keep").onclick = () => {
    done.textContent = keepAnswer(here);
    list();
  };
}

/** Keep the answer that stands; returns what came of it in words. */
function keepAnswer(here) {
  if (!here.reply) return "There is no answer to keep yet.";
  const tank = here.place.querySelector("#keep-tank").value.trim() || "My tank";
  const { lines } = here.reply.painted;
  const title = document.querySelector("h1").textContent;
  const room = keep({ tank, calculator: here.name, title, address: location.search, lines });
  return room ? `Kept for ${tank}, on this device.` : "Not kept: this browser allows no storage here. Share the link instead.";
}

export async function share(done, what = "calculation") {
  const link = { title: document.title, url: location.href };
  try {
    if (navigator.share) await navigator.share(link);
    else {
      await navigator.clipboard.writeText(link.url);
      done.textContent = `The link is on the clipboard. It opens this ${what}.`;
    }
  } catch {
    done.textContent = `Copy the address of this page: ${link.url}`;
  }
}
