// Runs Python in a worker: loads the trimmed runtime, then answers {id, question} with {id, answer}.
// Only text crosses: JSON in, JSON out. {prepare: calculator} is answered by nothing: it is imported before it is
// asked, and so are those of {ahead: [{calculator, question}]} while nobody asks. What comes with one as its question is
// answered ahead: {ahead: question, answer} says so to the page. All files come from this site.

import { broughtImage } from "./brought-image.js";
import { dropImage, keptImage } from "./python-image.js";
import { bringRest, bringTables, compileEarly, fetchRest, imageAddress, listAhead, listOfParts, startPython } from "./python-start.js";

const AT_A_TIME = 10; // ms of importing ahead before a question is heard
const LOADED = 85; // percent of the bar for what is fetched; the rest is Python's own start

let answer;
let prepare; // imports a calculator
let importAhead; // imports one module
let importPainting; // and what paints an answer, which every calculator needs
let tablesOf; // brings the tables that a calculator alone needs, once each
let bringWhole; // brings what most calculators go without
let isWhole = false; // whether that is there
let isAsked = false; // whether anybody has asked yet
const ahead = new Map(); // answers by questions that were answered before anybody asked them
const listed = listOfParts();
const starting = begin().then(
  (fromImage) => {
    postMessage({ ready: true, fromImage });
    if (!isAsked) restLater();
  },
  (wrong) => postMessage({ failed: String(wrong?.message ?? wrong) }),
);

self.onmessage = async ({ data: { id, question, prepare: calculator, ahead: wanted } }) => {
  if (wanted) return goAhead(wanted);
  isAsked = true;
  const asked = calculator ? { calculator } : JSON.parse(question);
  soon(asked).catch(() => {}); // looked at below
  await starting;
  if (calculator) {
    await comes(asked, question);
    return restLater(); // its page may ask nothing more
  }
  try {
    const said = ahead.get(question) ?? (await answered(asked, question));
    performance.mark("answered");
    postMessage({ id, answer: said });
  } catch (wrong) {
    postMessage({ id, error: String(wrong?.message ?? wrong) });
  }
  restLater();
};

/** Have what a question needs on its way while Python starts. */
async function soon(asked) {
  if (await needsRest(asked)) await fetchRest(await listed);
}

async function answered(asked, question) {
  await neededBy(asked);
  try {
    return answer(question);
  } catch (wrong) {
    if (isWhole) throw wrong;
    await bringWhole(); // it may lack no more than what is on its way
    return answer(question);
  }
}

async function comes(asked, question) {
  try {
    await neededBy(asked);
    prepare(asked.calculator);
    if (!question) return;
    const said = await answered(asked, question);
    ahead.set(question, said);
    postMessage({ ahead: question, answer: said }); // or it would wait until the browser has drawn the page
  } catch {
    // the question itself meets it again, and says what is wrong
  }
}

/** Make ready what an answer needs, and answer what each page will ask first, until anybody asks. */
async function goAhead(wanted) {
  isAsked = false; // the list is read again
  await starting;
  const { tables, first } = await listed;
  const light = wanted.filter(({ calculator }) => !tables[calculator]); // the others would fetch what may not be asked for
  const isHere = ({ calculator }) => first.includes(calculator);
  if (!isAsked) importPainting();
  await eachAhead(light.filter(isHere));
  await bringWhole().catch(() => {}); // each says so again
  await modulesAhead().catch(() => {});
  await eachAhead(light.filter((one) => !isHere(one)));
}

async function eachAhead(wanted) {
  for (const { calculator, question } of wanted) {
    await new Promise((done) => setTimeout(done)); // a question that has come is heard
    if (isAsked) return;
    if (!ahead.has(question)) await comes({ calculator }, question);
    performance.mark(`ahead: ${calculator}`);
  }
}

/** Import the modules of the larger calculators until anybody asks, whose question then waits for one of them at most. */
async function modulesAhead() {
  const modules = await listAhead(await listed);
  for (let until = 0; modules.length && !isAsked; ) {
    if (performance.now() > until) {
      await new Promise((done) => setTimeout(done)); // a question that has come is heard
      until = performance.now() + AT_A_TIME;
    } else importAhead(modules.shift());
  }
}

/** Whether the first piece of the calculators is not enough: the shelf asks in ways of its own. */
async function needsRest({ message, calculator }) {
  return !isWhole && (message || !(await listed).first.includes(calculator));
}

async function neededBy(asked) {
  if (await needsRest(asked)) await bringWhole();
  await tablesOf(asked.calculator);
}

/** Once nobody waits for an answer, so that the line is free for it. */
function restLater() {
  if (!isWhole) bringWhole().catch(() => {}); // who needs it asks again, and is told
}

async function begin() {
  for (const name of ["WebAssembly", "DecompressionStream"]) {
    if (!(name in self)) throw new Error(`this browser has no ${name}`); // before 4 MB are fetched
  }
  performance.mark("worker runs");
  const count = countBytes();
  const code = compileEarly();
  const parts = await listed;
  count.total = parts.bytes;
  const image = await keptImage(imageAddress(parts));
  performance.mark("image read");
  const fromImage = Boolean(image) && (await serves(parts, { whole: true, _loadSnapshot: image })); // private option of the pinned runtime
  if (image && !fromImage) dropImage(imageAddress(parts)).catch(() => {}); // nobody waits for it
  if (!fromImage && !(await startsFromBrought(parts, code, count))) await open(parts);
  count.isOver = true; // what comes later is none of the bar's
  postMessage({ percent: 100, text: "Ready." });
  return fromImage;
}

/** Whether Python starts from the image that the site brings. */
async function startsFromBrought(parts, code, count) {
  const brought = await broughtImage(parts, code, (bytes) => { count.total += bytes; });
  if (!brought) return false;
  performance.mark("image brought");
  return serves(parts, { brought });
}

/** Whether Python starts with an image. */
async function serves(parts, extra) {
  try {
    await open(parts, extra);
    return true;
  } catch {
    return false;
  }
}

/** Start Python, so that it can be asked; ``extra`` as for its start. */
async function open(parts, extra = {}) {
  const python = await startPython(parts, extra);
  postMessage({ percent: 95, text: "Python is starting." });
  isWhole = Boolean(extra.whole);
  bringWhole = async () => {
    await bringRest(python, parts);
    isWhole = true;
  };
  tablesOf = (calculator) => bringTables(python, parts.tables[calculator] ?? {});
  answer = python.runPython("from calculators.bridge import answer\nanswer");
  prepare = python.runPython("from calculators.core.run import find\nfind");
  importAhead = python.runPython("from calculators.bridge import import_ahead\nimport_ahead");
  importPainting = python.runPython("from calculators.bridge import import_painting\nimport_painting");
  performance.mark("calculators imported");
}

/**
 * Count what arrives of the large files, for the progress bar; their sizes come from the build. A copy is read, and
 * the reply goes on as it came: the browser keeps compiled code for those alone.
 */
function countBytes() {
  const plainFetch = self.fetch;
  const count = { total: Infinity, loaded: 0, isOver: false };
  self.fetch = async (...request) => {
    const reply = await plainFetch(...request);
    if (reply.body && reply.ok && !count.isOver) hear(reply.clone(), count).catch(() => {}); // who asked for it is told what is wrong
    return reply;
  };
  return count;
}

async function hear(reply, count) {
  const reader = reply.body.getReader();
  for (let piece = await reader.read(); !piece.done; piece = await reader.read()) {
    count.loaded += piece.value.byteLength;
    const percent = Math.min(LOADED, (LOADED * count.loaded) / count.total);
    if (!count.isOver) postMessage({ percent, text: "Python is loading. Fill in the form meanwhile." });
  }
}
