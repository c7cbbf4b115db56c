// What was chosen in a calculator's form for a tank: offered again the next time, where fields.json says so.

import { shelf, table } from "./shelf-start.js";
import { AGAIN } from "./settings.js";

/** Inputs by key, metric, as they were chosen for this tank the last time. */
export async function chosenLast(store, tank, calculator) {
  return (await store.setting(AGAIN))?.[tank.id]?.[calculator] ?? {};
}

/** Keep what was chosen each time that the form of a tank is answered; nothing of an example, or of a demo tank. */
export function rememberChoices(here) {
  here.form.addEventListener("answered", async ({ detail: reply }) => {
    const keys = (await table("fields")).again[here.name];
    const { tank } = here;
    if (!keys || !tank || tank.demo || here.borrowed || !reply.answer) return;
    const given = Object.fromEntries(keys.filter((key) => key in reply.address).map((key) => [key, reply.address[key]]));
    const store = await shelf();
    const all = (await store.setting(AGAIN)) ?? {};
    if (JSON.stringify(all[tank.id]?.[here.name]) === JSON.stringify(given)) return;
    await store.saveSetting(AGAIN, { ...all, [tank.id]: { ...all[tank.id], [here.name]: given } }).catch(() => {}); // no room: it is asked again
  });
}
