// Keeps a diagnosis among the tanks of this device, or shares its address.

import { keepFor, offerTanks, share } from "./keep.js";

export function keepAndShare(here, again) {
  const find = (name) => here.place.querySelector(name);
  const done = find("#diagnosis-done");
  offerTanks(find("#diagnosis-tanks"), find("#diagnosis-tank"));
  find("#diagnosis-share").onclick = () => share(done, "diagnosis");
  find("#diagnosis-keep").onclick = async () => {
    if (!here.reply?.questioning) {
      done.textContent = "There is no answer to keep yet.";
      return;
    }
    const { lines, plant } = here.reply.questioning;
    const title = plant ? `Something looks wrong: ${plant}` : "Something looks wrong";
    done.textContent = await keepFor(find("#diagnosis-tank").value.trim(), { calculator: "diagnose", page: "problems/", title, address: location.search, lines });
    offerTanks(find("#diagnosis-tanks"));
  };
  find("#diagnosis-again").onclick = () => {
    done.textContent = "";
    again();
  };
}
