// Keeps a diagnosis among the tanks of this device, or shares its address.

import { share } from "./keep.js";
import { element } from "./paint.js";
import { keep, kept } from "./store.js";

export function keepAndShare(here, again) {
  const find = (name) => here.place.querySelector(name);
  const done = find("#look-done");
  const list = () => find("#look-tanks").replaceChildren(...[...new Set(kept().map((one) => one.tank))].map((value) => element("option", { value })));
  list();
  find("#look-share").onclick = () => share(done, "diagnosis");
  find("#look-keep").onclick = () => {
    if (!here.reply?.look) {
      done.textContent = "There is no answer to keep yet.";
      return;
    }
    const tank = find("#look-tank").value.trim() || "My tank";
    const { lines, plant } = here.reply.look;
    const title = plant ? `Something looks wrong: ${plant}` : "Something looks wrong";
    const room = keep({ tank, calculator: "diagnose", page: "problems/", title, address: location.search, lines });
    done.textContent = room ? `Kept for ${tank}, on this device.` : "Not kept: this browser allows no storage here. Share the link instead.";
    list();
  };
  find("#look-again").onclick = () => {
    done.textContent = "";
    again();
  };
}
