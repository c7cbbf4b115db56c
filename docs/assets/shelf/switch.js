// The tank that the keeper stands at, in the head of every page.

import { called, shelf } from "./shelf-start.js";

const root = new URL("../..", import.meta.url);

let told; // who hears that another tank was chosen, as long as its page is open
let listening = false;

/** Show the switch where there are tanks; `changed(id)` of this page hears of another choice. */
export async function openSwitch() {
  const box = document.querySelector("#stand-at");
  if (!box) return;
  const store = await shelf().catch(() => null); // no storage here: no shelf, and no switch
  if (!store) return keepRoom(false);
  if (!listening) store.onChange(() => paint(store));
  listening = true;
  const choice = box.querySelector("select");
  choice.onchange = () => standAt(choice.value || null);
  box.querySelector("button").onclick = async () => {
    const { openLog } = await import("./log-sheet.js");
    openLog(await store.tank(choice.value));
  };
  await paint(store);
}

/** The keeper stands at another tank from now on, or at none. */
export async function standAt(id) {
  const store = await shelf();
  await store.choose(id);
  await paint(store);
  if (told?.main.isConnected) told.listener();
}

/** Hear of another choice while this page is open; the page before this one hears no more. */
export function onSwitch(listener) {
  told = { listener, main: document.querySelector("main") };
}

/** Whether the next page keeps the switch's room from the start (early.js), so that it moves nothing when it comes. */
function keepRoom(any) {
  document.documentElement.classList.toggle("has-tanks", any);
  try {
    localStorage.setItem("mulmbook-has-tanks", any ? "yes" : "no");
  } catch {
    // no storage here, or no room: the switch comes as it comes
  }
}

async function paint(store) {
  const box = document.querySelector("#stand-at");
  if (!box) return;
  const [tanks, chosen] = await Promise.all([store.tanks(), store.chosen()]);
  const here = tanks.find((tank) => tank.id === chosen);
  const choice = box.querySelector("select");
  const options = [new Option("no tank", ""), ...tanks.map((tank) => new Option(called(tank), tank.id))];
  choice.replaceChildren(...options);
  choice.value = here?.id ?? "";
  box.querySelector("label").textContent = here?.demo ? "Demo" : "At";
  const open = box.querySelector("a");
  open.hidden = box.querySelector("button").hidden = !here;
  if (here) open.href = new URL(`shelf/tank/#${here.id}`, root).href;
  box.hidden = !tanks.length;
  keepRoom(tanks.length > 0);
}
