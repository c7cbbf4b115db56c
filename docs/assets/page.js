// Every page's script: units, the offline copy, and keeping Python alive from page to page.

import { startOnIntent } from "./early-python.js";
import { arrive, leave } from "./history-entry.js";
import { openKeys } from "./keys.js";
import { isRunning } from "./runtime.js";
import { chosenUnits } from "./device-choices.js";
import { isRenewed, watchForNews } from "./offline.js";
import { partAt, PLACES } from "./page-parts.js";
import { openReadHere } from "./read-here.js";
import { painted } from "./trust.js";
import { waitedFor } from "./waited-for.js";

const root = new URL("..", import.meta.url);

async function open() {
  startOnIntent(root); // before anything is waited for: a touch may come at once
  document.documentElement.dataset.units = document.querySelector("#calculator") ? "metric" : chosenUnits();
  /** @type {NodeListOf<HTMLAnchorElement>} */
  const doors = document.querySelectorAll(".doors-below a");
  document.body.dataset.root = root.href; // the base theme writes the body
  openDrawer();
  openScheme();
  for (const link of doors) {
    if (location.pathname.startsWith(new URL(link.href).pathname)) link.setAttribute("aria-current", "true");
  }
  const main = document.querySelector("main");
  for (const place of PLACES) {
    if (!document.querySelector(place)) continue;
    const part = await partAt(place);
    if (main.isConnected) await part.first?.(root); // what it can show before anything else is read
    if (!main.isConnected) return; // a link has swapped the page meanwhile, which opens its own parts
    part.open(root);
  }
  (await import("./shelf/switch.js")).openSwitch();
  if (document.querySelector('#main a[href*="rules/"], #main a[href*="calculators/"]')) (await import("./shelf/page-lines.js")).openLines();
  watchForNews(root); // after a part that starts Python: on a slow line the first answer comes first
}

/** The drawer of pages: its button says whether it is open, and Escape closes it. */
function openDrawer() {
  /** @type {HTMLInputElement} */
  const drawer = document.querySelector("#__drawer");
  /** @type {HTMLButtonElement} */
  const button = document.querySelector("#pages");
  const turn = (open) => {
    drawer.checked = open;
    button.setAttribute("aria-expanded", String(open));
  };
  button.onclick = () => {
    turn(!drawer.checked);
    /** @type {HTMLElement} */
    const first = document.querySelector("#all-pages a");
    if (drawer.checked) first.focus();
  };
  drawer.onchange = () => turn(drawer.checked); // by a tap beside it
  document.body.onkeydown = ({ key }) => {
    if (key !== "Escape" || !drawer.checked) return;
    turn(false);
    button.focus();
  };
}

/** Light, dark, or as the device says; the choice is this device's. */
function openScheme() {
  const place = document.querySelector("#scheme");
  const show = () => {
    for (const button of place.querySelectorAll("button")) {
      button.setAttribute("aria-pressed", String(button.dataset.scheme === document.documentElement.dataset.scheme));
    }
  };
  for (const button of place.querySelectorAll("button")) {
    button.onclick = () => {
      localStorage.setItem("mulmbook-scheme", button.dataset.scheme);
      document.dispatchEvent(new Event("scheme"));
      show();
    };
  }
  place.hidden = false;
  show();
}

// While Python runs, a link swaps the page instead of loading it anew, so that the worker stays alive.
// Without the Navigation API, or before Python was ever started, links work as always.
window.navigation?.addEventListener("navigate", (event) => {
  const url = new URL(event.destination.url);
  const elsewhere = !url.href.startsWith(root.href) || /\.\w+$/.test(url.pathname);
  const stays = event.hashChange || event.navigationType === "replace" || event.navigationType === "reload";
  // What asks a question at a time keeps each answer as a step of the history, in one page.
  const step = document.querySelector("#diagnosis-at-tank, [data-steps]") && url.pathname === location.pathname && event.destination.sameDocument;
  if (isRenewed() || !isRunning() || !event.canIntercept || elsewhere || stays || step || event.downloadRequest !== null) return;
  leave();
  event.intercept({ handler: () => waitedFor(swap(url)) });
});

let taps = 0; // on links: of two in a row the last decides which page stands, whichever comes first

async function swap(url) {
  const tap = ++taps;
  try {
    const reply = await fetch(url);
    if (!reply.ok) throw new Error(reply.statusText);
    const text = await reply.text();
    if (tap !== taps) return;
    const page = new DOMParser().parseFromString(painted(text), "text/html");
    document.title = page.title;
    preload(page, url);
    document.body.replaceChildren(...page.body.childNodes);
  } catch {
    if (tap === taps) location.reload(); // the address is the new one already: let the browser show what it can
    return;
  }
  arrive();
  await open();
}

/** Fetch side by side the modules that a page names, as the browser does for a page that it loads itself. */
function preload(page, url) {
  const named = new Set(modulesNamed(document).map(({ href }) => href));
  for (const link of modulesNamed(page)) {
    const address = new URL(link.getAttribute("href"), url).href;
    if (named.has(address)) continue;
    document.head.append(Object.assign(document.createElement("link"), { rel: "modulepreload", href: address }));
  }
}

/** @returns {HTMLLinkElement[]} */
function modulesNamed(page) {
  return [...page.head.querySelectorAll("link[rel=modulepreload]")];
}

// The head stays when a page is swapped, and a browser may ask for the icon again: from here on it is named in full.
/** @type {NodeListOf<HTMLLinkElement>} */
const icons = document.head.querySelectorAll("link[rel~=icon], link[rel=apple-touch-icon]");
for (const icon of icons) icon.href = String(icon.href);

openKeys(root);
openReadHere();
open();
