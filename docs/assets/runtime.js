// The page's side of Python: one worker, started when a calculator is opened, asked in plain JSON.

import { workerAt } from "./trust.js";

let worker = null;
let ready = null; // a promise while it starts, and after
let count = 0;
const waiting = new Map();
const watchers = new Set();

export function isRunning() {
  return worker !== null;
}

/** Resolves once Python runs or has failed; at once where nobody has started it. */
export function settled() {
  return Promise.resolve(ready).catch(() => {});
}

/** Start Python if it does not run yet. `watch(percent, text)` hears how far it has come. */
export function start(watch) {
  watchers.clear(); // the page before this one is gone
  if (watch) watchers.add(watch);
  ready ??= begin();
  return ready;
}

/** Ask one question, plain data, and have the answer as plain data. */
export async function ask(question) {
  await (ready ??= begin());
  return new Promise((resolve, reject) => {
    const id = ++count;
    waiting.set(id, { resolve, reject });
    worker.postMessage({ id, question: JSON.stringify(question) });
  });
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
      else if (data.ready) resolve();
      else if (data.failed) fail(data.failed);
      else settle(data);
    };
  }));
}

function settle({ id, answer, error }) {
  const one = waiting.get(id);
  waiting.delete(id);
  if (error) one?.reject(new Error(error));
  else one?.resolve(JSON.parse(answer));
}
