// Opens the shelf: the keeper's own tanks on this device. Nothing leaves it.

import { Database } from "./database.js";
import { Log } from "./log.js";
import { Memory } from "./memory.js";
import { moveOld } from "./move.js";
import { Shelf } from "./shelf.js";
import { shelfError } from "./shelf-error.js";

export { ShelfError } from "./shelf-error.js";

let opening = null;

/** The one shelf of this page. Where nothing can be stored it lives in memory, and `trouble` says why. */
export function openShelf() {
  opening ??= open();
  return opening;
}

async function open() {
  const database = new Database(() => log.lookAgain());
  const log = new Log(database);
  try {
    await log.readAll();
  } catch (refusal) {
    const trouble = shelfError(refusal);
    return new Shelf(await inMemory(trouble), trouble);
  }
  try {
    await moveOld(log);
  } catch (refusal) {
    log.notMoved = shelfError(refusal);
  }
  askToPersist(log);
  return new Shelf(log, null);
}

async function inMemory(trouble) {
  const log = new Log(new Memory(trouble.reason === "newer" ? trouble : null)); // a newer shelf is there: write nothing beside it
  await log.readAll();
  return log;
}

/** Ask the browser not to clear the shelf when space runs short; only where there is something on it. */
function askToPersist(log) {
  const ask = () => navigator.storage?.persist?.().catch(() => {});
  if (log.view.all.length) return ask();
  const stop = log.onChange(() => {
    stop();
    ask();
  });
  return undefined;
}
