// On the first page: how the tank stands that the keeper stands at, as it was last worked out, and which others need
// somebody now. Python is not started for it, but where something is logged while the page stands: it may be what harms.

import { element } from "../paint.js";
import { called, shelf } from "./shelf-start.js";
import { keptStanding, standingNow } from "./standings.js";
import { besideSign, sign } from "./verdict.js";

export async function open(root) {
  const box = document.querySelector("#stands-here");
  const store = await shelf().catch(() => null); // no storage here: no shelf
  if (!store) return;
  const paint = () => paintStands(store, box, root);
  const stop = store.onChange(({ only }) => {
    if (!box.isConnected) return stop();
    paint();
    if (!only) workOut(store); // not for a choice, nor for an answer that was kept
  });
  await paint();
}

/** Work out the tank here; keeping the answer is a change of the shelf, which paints. */
async function workOut(store) {
  const id = await store.chosen();
  const tank = id && (await store.tank(id));
  if (tank) await standingNow(store, tank).catch(() => {}); // without Python what is kept says that it is of before
}

async function paintStands(store, box, root) {
  const [tanks, chosen] = await Promise.all([store.tanks(), store.chosen()]);
  const known = await Promise.all(tanks.map(async (tank) => ({ tank, standing: await keptStanding(store, tank) })));
  const here = known.find(({ tank }) => tank.id === chosen);
  const others = known.filter((one) => one !== here && one.standing?.outputs?.verdict === "act");
  const first = here ? [stands(here, root)] : tanks.length ? [noTank(root)] : [];
  box.replaceChildren(...first, ...(others.length ? [needSomebody(others, root)] : []));
}

function stands({ tank, standing }, root) {
  const found = standing?.outputs;
  const sentence = found ? besideSign(found.sentence, found.verdict) : "Not worked out yet.";
  return element("p", {}, link(tank, root), " ", sign(found?.verdict), ` ${sentence}`);
}

/** In the room that is kept for the tank's verdict. */
function noTank(root) {
  return element("p", {}, "You stand at no tank. Choose it above, or see ", element("a", { href: new URL("shelf/", root).href, textContent: "how all of them stand" }), ".");
}

function needSomebody(others, root) {
  const names = others.flatMap(({ tank }, at) => [at ? ", " : " ", link(tank, root)]);
  return element("p", {}, sign("act"), ...names);
}

function link(tank, root) {
  return element("a", { href: new URL(`shelf/tank/#${tank.id}`, root).href, textContent: called(tank) });
}
