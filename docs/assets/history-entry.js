// The entry of the history in which a page keeps its address and what was typed. A tapped link has the next page's
// entry open before that page stands: what the old page would still write, an answer that comes late or a last key,
// would be read as the next page's own figures.

let isLeaving = false;

/** From the tap on a link on: no page writes. */
export function leave() {
  isLeaving = true;
}

/** The page of the link stands and may write. */
export function arrive() {
  isLeaving = false;
}

/**
 * Write the address and the state of the page that holds ``part``; nothing once that page is left.
 * @param {Element} part
 * @param {string} address
 * @param {{state?: any, how?: "replace" | "push"}} [more] the state that stands, and in place of it, if not told
 */
export function writeEntry(part, address, { state = history.state, how = "replace" } = {}) {
  if (isLeaving || !part.isConnected) return;
  history[`${how}State`](state, "", address);
}
