// Keeps a diagnosis among the tanks of this device, or shares its address.

import { keepFor, offerTanks, share } from "./keep.js";

export function keepAndShare(here, again) {
  const find = (name) => here.place.querySelector(name);
  const done = find("#look-done");
  offerTanks(find("#look-tanks"), find("#look-tank"));
  find("#look-share").onclick = () => share(done, "diagnosis");
  find("#look-keep").onclick = async () => {
    if (!here.reply?.look) {
      done.textContent = "There is no answer to keep yet.";
      return;
    }
    const { lines, plant } = here.reply.look;
    const title = plant ? `Something looks wrong: ${plant}` : "Something looks wrong";
    done.textContent = await keepFor(find("#look-tank").value.trim(), { calculator: "diagnose", page: "problems/", title, address: location.search, lines });
    offerTanks(find("#look-tanks"));
  };
  find("#look-again").onclick = () => {
    done.textContent = "";
    again();
  };
}
