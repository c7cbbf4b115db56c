// Every page's script: units, the offline copy, and keeping Python alive from page to page.

import { isRunning } from "./runtime.js";
import { chosenUnits } from "./store.js";
import { isRenewed, watchForNews } from "./offline.js";

const root = new URL("..", import.meta.url);

// What a page needs beyond this is loaded only where its place stands in the page.
const PARTS = {
  "#calculator": () => import("./calculator.js"),
  "#photo": () => import("./photo.js"), // after the calculator, whose form it fills
  "#finder": () => import("./search.js"),
  "#tanks": () => import("./my-tanks.js"),
  "#plant-table": () => import("./plant-table.js"),
  "#compare": () => import("./compare.js"),
  "#diagnosis": () => import("./diagnosis.js"),
};

async function open() {
  document.documentElement.dataset.units = document.querySelector("#calculator") ? "metric" : chosenUnits();
  /** @type {NodeListOf<HTMLAnchorElement>} */
  const doors = document.querySelectorAll("body > nav a");
  openDrawer();
  openScheme();
  for (const link of doors) {
    if (location.pathname.startsWith(new URL(link.href).pathname)) link.setAttribute("aria-current", "true");
  }
  for (const [place, load] of Object.entries(PARTS)) {
    if (document.querySelector(place)) (await load()).open(root);
  }
  watchForNews(root); // after a part that starts Python: on a slow line the first answer comes first
}

/** The drawer closes with Escape. */
function openDrawer() {
  /** @type {HTMLInputElement} */
  const drawer = document.querySelector("#__drawer");
  /** @type {HTMLButtonElement} */
  const button = document.querySelector("#pages");
  button.onclick = () => {
    drawer.checked = !drawer.checked;
  };
  document.body.onkeydown = ({ key }) => {
    if (key === "Escape") drawer.checked = false;
    if (key === "/" && !document.activeElement?.matches("input, select, textarea")) setTimeout(find); // the key itself is not typed
  };
}

/** To the page's own search field, or to the page of search. */
function find() {
  /** @type {HTMLElement} */
  const field = document.querySelector("#query");
  if (field) field.focus();
  else location.href = new URL("search/", root).href;
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
  // The diagnosis keeps each answer as a step of the history, in one page.
  const step = document.querySelector("#diagnosis") && url.pathname === location.pathname && event.destination.sameDocument;
  if (isRenewed() || !isRunning() || !event.canIntercept || elsewhere || stays || step || event.downloadRequest !== null) return;
  event.intercept({ handler: () => swap(url) });
});

async function swap(url) {
  try {
    const reply = await fetch(url);
    if (!reply.ok) throw new Error(reply.statusText);
    const page = new DOMParser().parseFromString(await reply.text(), "text/html");
    document.title = page.title;
    document.body.replaceChildren(...page.body.childNodes);
  } catch {
    location.reload(); // the address is the new one already: let the browser show what it can
    return;
  }
  await open();
}

open();
