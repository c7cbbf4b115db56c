// What a keeper waits for at this moment. The copy of the book, which nobody waits for, lets it go first.

/** @type {((waits: boolean) => void)[]} */
const listeners = [];
let pending = 0;

/** Hears ``true`` when a wait begins and ``false`` once nothing is waited for. */
export function onWaiting(listener) {
  listeners.push(listener);
  if (pending) listener(true);
}

/**
 * Say that somebody waits for this; gives it back.
 * @template Awaited
 * @param {Promise<Awaited>} promise
 */
export function waitedFor(promise) {
  pending += 1;
  if (pending === 1) tell(true);
  const over = () => {
    pending -= 1;
    if (!pending) tell(false);
  };
  promise.then(over, over);
  return promise;
}

function tell(waits) {
  for (const listener of listeners) listener(waits);
}
