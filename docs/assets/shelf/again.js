// What was chosen in a calculator's form for a tank: offered again the next time, where fields.json says so.

import { isSame } from "./item.js";
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
    if (isSame(await chosenLast(store, tank, here.name), given)) return;
    const chosen = (all) => ({ ...all, [tank.id]: { ...all?.[tank.id], [here.name]: given } });
    await store.changeSetting(AGAIN, chosen).catch(() => {}); // no room: it is asked again
  });
}
