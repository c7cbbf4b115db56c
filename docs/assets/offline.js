// Registers the service worker, says when a new version of the book is ready, and sees that the copy is whole.

import { atMost } from "./at-most.js";
import { settled } from "./runtime.js";
import { workerAt } from "./trust.js";
import { onWaiting } from "./waited-for.js";

const AT_MOST = 60_000; // ms that the copy waits for Python, so that a slow line serves the first answer first
const MEGABYTE = 1e6;

let registration;
let hadCopy; // whether a copy served this page as it was loaded
let taken = false; // whether this page asked for the new version
let checked = false; // once a load is enough
let renewed = false; // whether another page did: what stands here is of the old version

export async function watchForNews(root) {
  if (!("serviceWorker" in navigator)) return;
  if (!registration) {
    hadCopy = Boolean(navigator.serviceWorker.controller);
    navigator.serviceWorker.addEventListener("controllerchange", changed);
    if (!hadCopy) await atMost(settled(), AT_MOST);
    registration = await navigator.serviceWorker
      .register(workerAt(new URL("service-worker.js", root)), { scope: root.pathname, updateViaCache: "none" })
      .catch(() => null); // a host without https; the book works, but only with a signal
    if (!registration) return;
    onWaiting(letGoFirst);
    registration.addEventListener("updatefound", () => follow(registration.installing));
    follow(registration.installing);
  }
  show();
  if (!checked || document.querySelector("#copy")) checkCopy();
}

/** A copy that is just being made stops at its next file while somebody waits. */
function letGoFirst(waits) {
  registration.installing?.postMessage(waits ? "hold" : "go on");
}

/** Whether the pages that the copy serves now are of another version than this page's scripts. */
export function isRenewed() {
  return renewed;
}

function changed() {
  if (taken) return location.reload();
  if (hadCopy) {
    renewed = true;
    say("The book was renewed in another tab. What you typed here stays until you load it again.", "Load it again", () => location.reload());
  } else checkCopy(true); // the first copy is there
  hadCopy = true;
}

function follow(worker) {
  worker?.addEventListener("statechange", show);
}

function show() {
  if (renewed) return;
  if (!registration?.waiting || !navigator.serviceWorker.controller) return hush();
  say("A new version of the book is ready.", "Take it", () => {
    taken = true;
    registration.waiting?.postMessage("take");
  });
}

function say(text, label, act) {
  const news = document.querySelector("#news");
  news.querySelector("span").textContent = text;
  const button = news.querySelector("button");
  button.textContent = label;
  button.onclick = act;
  news.hidden = false;
}

function hush() {
  document.querySelector("#news").hidden = true;
}

/** Have the copy looked through and mended; ``first`` says aloud that the book is on the device now. */
function checkCopy(first = false) {
  const { port1, port2 } = new MessageChannel();
  port1.onmessage = ({ data }) => {
    const place = document.querySelector("#copy");
    if (place) place.textContent = words(data);
    if (first && data.whole) say(`The whole book is on this device now, ${size(data.bytes)}. It works with no signal.`, "Good", hush);
  };
  checked = Boolean(navigator.serviceWorker.controller);
  navigator.serviceWorker.controller?.postMessage("check", [port2]);
}

function words({ whole, version, bytes, since, why }) {
  const name = version.slice(0, 8);
  if (!whole) return `Version ${name} is not whole on this device: ${why}. With a signal, open any page again.`;
  const day = since ? ` since ${new Date(since).toLocaleDateString("en-GB", { day: "numeric", month: "long", year: "numeric" })}` : "";
  return `The whole book is on this device${day}: ${size(bytes)}, version ${name}.`;
}

function size(bytes) {
  return `${(bytes / MEGABYTE).toFixed(1)} MB`;
}
