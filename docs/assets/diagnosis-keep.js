// Keeps a diagnosis among the tanks of this device, or shares its address.

import { share } from "./keep.js";
import { element } from "./paint.js";
import { keep, kept } from "./store.js";

export function keepAndShare(here, again) {
  const find = (name) => here.place.querySelector(name);
  const done = find("#diagnosis-done");
  const list = () => find("#diagnosis-tanks").replaceChildren(...[...new Set(kept().map((one) => one.tank))].map((value) => element("option", { value })));
  list();
  find("#diagnosis-share").onclick = () => share(done, "diagnosis");
  find("#diagnosis-keep").onclick = () => {
    if (!here.reply?.questioning) {
      done.textContent = "There is no answer to keep yet.";
      return;
    }
    const tank = find("#diagnosis-tank").value.trim() || "My tank";
    const { lines, plant } = here.reply.questioning;
    const title = plant ? `Something looks wrong: ${plant}` : "Something looks wrong";
    const room = keep({ tank, calculator: "diagnose", page: "problems/", title, address: location.search, lines });
    done.textContent = room ? `Kept for ${tank}, on this device.` : "Not kept: this browser allows no storage here. Share the link instead.";
    list();
  };
  find("#diagnosis-again").onclick = () => {
    done.textContent = "";
    again();
  };
}
