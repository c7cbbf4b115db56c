// Starts Python before its answer is asked for: on a calculator's page while its scripts still load, on the list of
// calculators, and when a finger goes down on a link to one or to that list.

import { blankQuestion } from "./blank-question.js";
import { partAt } from "./page-parts.js";
import { prepare, prepareAhead, settled, start } from "./runtime.js";

let listening = false;

/** Look at this page, and from now on at every link that is touched. */
export function startOnIntent(root) {
  const list = new URL("calculators/", root);
  if (document.querySelector("#calculator")) early();
  else if (location.pathname === list.pathname) whenIdle(() => { early(); settled().then(() => readAhead(list)); });
  if (listening) return;
  listening = true;
  addEventListener("pointerdown", ({ target }) => {
    const link = target instanceof Element ? target.closest("a") : null;
    if (!(link instanceof HTMLAnchorElement)) return; // a link inside a drawing has no plain address
    if (!link.href.startsWith(list.href)) return;
    early();
    const calculator = calculatorOf(link, list);
    if (calculator) prepare(calculator, link.search ? undefined : firstQuestion(calculator));
  }, { passive: true });
}

/** What a calculator's page will ask first; unknown where a tank will fill the form, which then asks for no example. */
function firstQuestion(calculator) {
  /** @type {HTMLSelectElement | null} */
  const tank = document.querySelector("#stand-at select");
  return tank?.value ? undefined : blankQuestion(calculator);
}

function early() {
  start().catch(() => {}); // the calculator's page says so, and offers another try
}

/** The calculator that a link leads to; empty where it leads to none. */
function calculatorOf(link, list) {
  return link.href.startsWith(list.href) ? new URL(link.href).pathname.slice(list.pathname.length).split("/")[0] : "";
}

/** What a tap on the list will ask for, the page's scripts and Python's modules; after its start, which takes longest. */
function readAhead(list) {
  partAt("#calculator").catch(() => {}); // the page itself asks again, and loads anew where it must
  /** @type {NodeListOf<HTMLAnchorElement>} */
  const links = document.querySelectorAll("#main a");
  const names = new Set([...links].map((link) => calculatorOf(link, list)).filter(Boolean));
  prepareAhead([...names].map((calculator) => ({ calculator, question: firstQuestion(calculator) })));
}

function whenIdle(act) {
  if (window.requestIdleCallback) requestIdleCallback(act);
  else setTimeout(act, 0); // not known to every engine
}
