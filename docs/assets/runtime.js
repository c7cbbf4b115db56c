// The page's side of Python: one worker, started when a calculator is opened, asked in plain JSON.

import { workerAt } from "./trust.js";
import { waitedFor } from "./waited-for.js";

const IMAGE_AFTER = 5_000; // ms, by when the first answers are given and the processor is free

let worker = null;
let ready = null; // a promise while it starts, and after
let fromImage = false; // whether it started from the image of an earlier visit
let count = 0;
const waiting = new Map();
const ahead = new Map(); // answers by questions that were answered before anybody asked them, both as text
const watchers = new Set();

export function isRunning() {
  return worker !== null;
}

export function isFromImage() {
  return fromImage;
}

/** Resolves once Python runs or has failed; at once where nobody has started it. */
export function settled() {
  return Promise.resolve(ready).catch(() => {});
}

/** Start Python if it does not run yet. `watch(percent, text)` hears how far it has come. */
export function start(watch) {
  watchers.clear(); // the page before this one is gone
  if (watch) watchers.add(watch);
  return running();
}

/** Ask one question, plain data, and have the answer as plain data. */
export async function ask(question) {
  await running();
  const text = JSON.stringify(question);
  if (ahead.has(text)) return JSON.parse(ahead.get(text)); // before the browser draws the page that asks
  return waitedFor(new Promise((resolve, reject) => {
    const id = ++count;
    waiting.set(id, { resolve, reject });
    worker.postMessage({ id, question: text });
  }));
}

/**
 * Where Python runs or starts, have it import a calculator whose page is on its way. A `question` that the page is
 * likely to ask is answered ahead of it.
 */
export function prepare(calculator, question) {
  worker?.postMessage({ prepare: calculator, question: question && JSON.stringify(question) });
}

/** Where Python runs or starts, have it do the same for each of `{ calculator, question }` while nobody asks. */
export function prepareAhead(wanted) {
  worker?.postMessage({ ahead: wanted.map(({ calculator, question }) => ({ calculator, question: question && JSON.stringify(question) })) });
}

function running() {
  ready ??= waitedFor(begin());
  return ready;
}

function begin() {
  return /** @type {Promise<void>} */ (new Promise((resolve, reject) => {
    worker = new Worker(workerAt(new URL("./calculator-worker.js", import.meta.url)), { type: "module" });
    const fail = (text) => {
      worker?.terminate();
      worker = ready = null; // so that another try starts afresh
      for (const one of waiting.values()) one.reject(new Error(text));
      waiting.clear();
      reject(new Error(text));
    };
    worker.onerror = (event) => fail(event.message || "the worker could not be loaded");
    worker.onmessage = ({ data }) => {
      if (data.percent !== undefined) for (const watch of watchers) watch(data.percent, data.text);
      else if (data.ready) {
        fromImage = data.fromImage;
        resolve();
        if (!fromImage) makeImageLater();
      }
      else if (data.failed) fail(data.failed);
      else if (data.ahead) ahead.set(data.ahead, data.answer);
      else settle(data);
    };
  }));
}

/** Once for each version, where the whole book is on the device: make the image that later visits start from. */
async function makeImageLater() {
  if (!navigator.serviceWorker) return;
  await navigator.serviceWorker.ready;
  await new Promise((done) => setTimeout(done, IMAGE_AFTER));
  const maker = new Worker(workerAt(new URL("./image-worker.js", import.meta.url)), { type: "module" });
  maker.onmessage = maker.onerror = () => maker.terminate(); // without an image a start takes longer, and nothing is lost
}

function settle({ id, answer, error }) {
  const one = waiting.get(id);
  waiting.delete(id);
  if (error) one?.reject(new Error(error));
  else one?.resolve(JSON.parse(answer));
}
