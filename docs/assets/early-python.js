// Starts Python before its answer is asked for: on a calculator's page while its scripts still load, on the list of
// calculators, and when a finger goes down on a link to one or to that list.

import { prepare, settled, start } from "./runtime.js";

let listening = false;

/** Look at this page, and from now on at every link that is touched. */
export function startOnIntent(root) {
  const list = new URL("calculators/", root);
  if (document.querySelector("#calculator")) early();
  else if (location.pathname === list.pathname) whenIdle(() => { early(); settled().then(readAhead); });
  if (listening) return;
  listening = true;
  addEventListener("pointerdown", ({ target }) => {
    const link = target instanceof Element ? target.closest("a") : null;
    if (!(link instanceof HTMLAnchorElement)) return; // a link inside a drawing has no plain address
    if (!link.href.startsWith(list.href)) return;
    early();
    const [calculator] = new URL(link.href).pathname.slice(list.pathname.length).split("/");
    if (calculator) prepare(calculator);
  }, { passive: true });
}

function early() {
  start().catch(() => {}); // the calculator's page says so, and offers another try
}

/** The scripts of a calculator's page, which a tap on one will ask for; after Python, whose start takes longest. */
function readAhead() {
  import("./calculator.js").catch(() => {}); // the page itself asks again, and loads anew where it must
}

function whenIdle(act) {
  if (window.requestIdleCallback) requestIdleCallback(act);
  else setTimeout(act, 0); // not known to every engine
}
