// Something looks wrong: a place is tapped, then a question at a time. Which question comes next, its answers
// and the ranking come from Python; until it has loaded, from what the build wrote into the page.

import { ask, start } from "./runtime.js";
import { chosenUnits } from "./device-choices.js";
import { collect, fill, paintProblems } from "./form.js";
import { keepAndShare } from "./diagnosis-keep.js";
import { listSigns, noteAndGoOn, showQuestion, signsOf } from "./diagnosis-question.js";
import { hideDiagnosis, paintDiagnosis } from "./diagnosis-paint.js";
import { openPlant } from "./diagnosis-plant.js";
import { writeEntry } from "./history-entry.js";
import { fillDiagnosis, diagnosisAnew } from "./shelf/fill-diagnosis.js";
import { onSwitch } from "./shelf/switch.js";

const PAUSE = 300; // ms after the last key in a field before Python is asked
const LISTS = ["findings", "absent", "asked"]; // of keys, with commas between them in the address
const PLAIN = ["place", "listing", "on", "plant"];

let page; // the diagnosis that is open
let listens = false;

export function open(root) {
  const place = document.querySelector("#diagnosis-at-tank");
  const here = { root, place, form: place.querySelector("#diagnosis-fields"), units: "metric", count: 0, ready: false };
  page = here;
  find(here, "#diagnosis-more").hidden = false;
  openTaps(here);
  here.plant = openPlant(here, (key) => step(here, { plant: key }, "replace"));
  here.form.addEventListener("input", ({ target }) => {
    if (target instanceof Element && target.id === "diagnosis-plant") return;
    clearTimeout(here.timer);
    here.timer = setTimeout(() => answer(here), PAUSE);
  });
  here.form.addEventListener("submit", (event) => event.preventDefault());
  keepAndShare(here, () => step(here, { place: "", listing: "", on: "", plant: "", findings: [], absent: [], asked: [], fields: {} }));
  if (!listens) addEventListener("popstate", () => page.place.isConnected && arrive(page));
  listens = true;
  arrive(here);
  if (!Object.keys(here.state.fields).length) fromTank(here);
  onSwitch(() => fromTank(here));
  start().then(() => { here.ready = true; answer(here); }, () => say(here, "Python could not start. The index of signs and the key, below, need no Python."));
}

function find(here, name) {
  return here.place.querySelector(name);
}

function say(here, text) {
  find(here, "#diagnosis-said").textContent = text;
}

/** Take over what the address says. */
function arrive(here) {
  const given = new URLSearchParams(location.search);
  const own = Object.keys(collect(here.form)); // any other word, as a shared link carries, is left out and said
  here.state = Object.fromEntries(PLAIN.map((key) => [key, given.get(key) ?? ""]));
  for (const key of LISTS) here.state[key] = (given.get(key) ?? "").split(",").filter(Boolean);
  here.unknown = [...new Set(given.keys())].filter((key) => ![...PLAIN, ...LISTS, ...own].includes(key));
  if (!isPlace(here, here.state.place)) here.unknown.push(here.state.place);
  if (!isPlace(here, here.state.place)) here.state.place = "";
  here.leftOut = "";
  const figures = own.filter((key) => given.has(key)); // readings, in metric units
  here.state.fields = Object.fromEntries(figures.map((key) => [key, given.get(key)]));
  here.units = figures.length ? "metric" : chosenUnits();
  fill(here.form, Object.fromEntries(own.map((key) => [key, given.get(key) ?? ""])));
  document.documentElement.dataset.units = here.units;
  here.plant.show(here.state.plant);
  here.reply = here.shown = null;
  show(here);
  answer(here);
}

/** The readings of the tank that the keeper stands at; an address that brings its own wins. */
async function fromTank(here) {
  const typed = Object.values(collect(here.form)).some(Boolean);
  if (!(await fillDiagnosis(here))) return;
  if (!typed) here.units = document.documentElement.dataset.units = "metric"; // they change with the next answer
  here.state.fields = {};
  here.shown = null;
  answer(here);
}

function isPlace(here, name) {
  return !name || [...here.place.querySelectorAll("[data-place]")].some((one) => one.dataset.place === name);
}

/** Change something, put it into the address, and show it. */
function step(here, change, how = "push") {
  here.leftOut = "";
  here.state = { ...here.state, ...change };
  if (change.fields) here.shown = null;
  if (change.fields) fill(here.form, Object.fromEntries(Object.keys(collect(here.form)).map((key) => [key, ""])));
  if (change.plant !== undefined) here.plant.show(change.plant);
  remember(here, how);
  here.reply = null;
  show(here, true);
  answer(here);
}

function remember(here, how) {
  const { fields, ...state } = here.state;
  const query = new URLSearchParams();
  for (const [key, value] of Object.entries({ ...state, ...fields })) if (String(value)) query.set(key, String(value));
  const depth = (history.state?.depth ?? 0) + (how === "push" ? 1 : 0);
  writeEntry(here.place, location.pathname + (String(query) ? `?${String(query).replaceAll("%2C", ",")}` : ""), { state: { depth }, how });
}

function openTaps(here) {
  here.place.addEventListener("click", (event) => {
    const at = event.target.closest("[data-place]");
    const chip = event.target.closest("#diagnosis-chips button");
    if (chip) answerWith(here, chip);
    else if (event.target.closest(".drop")) drop(here, event.target.closest(".drop").dataset.keys.split(","));
    else if (at && (at.matches("a") || event.target.closest("summary"))) {
      event.preventDefault();
      step(here, { place: at.dataset.place, listing: "1" });
    }
  });
  find(here, "#diagnosis-back").onclick = () => back(here);
  find(here, "#diagnosis-place").onclick = () => step(here, { place: "", listing: "" });
}

/** An answer was tapped: a sign of a place, or one of a question's. It takes the other bands of its figure back. */
function answerWith(here, { dataset }) {
  if (dataset.more) {
    step(here, { on: "1" });
    return;
  }
  const { findings, absent, asked } = here.state;
  const rivals = dataset.rivals.split(",");
  const put = (list, text) => [...new Set([...list.filter((key) => !rivals.includes(key)), ...text.split(",").filter(Boolean)])];
  const present = put(findings, dataset.present);
  step(here, {
    findings: present, absent: put(absent, dataset.absent).filter((key) => !present.includes(key)),
    asked: put(asked, dataset.present || dataset.asked), listing: "",
  });
}

/** Take answers back by their keys. */
function drop(here, keys) {
  const without = (list) => list.filter((key) => !keys.includes(key));
  step(here, Object.fromEntries(LISTS.map((name) => [name, without(here.state[name])])));
}

/** Take the last answer back: a step of the history, or, in a link that was opened, by its keys. */
function back(here) {
  const last = here.state.asked.at(-1);
  if (history.state?.depth > 0) history.back();
  else if (last === undefined) step(here, { place: "", listing: "" });
  else drop(here, here.reply?.questioning?.answers.find((one) => one.keys.includes(last))?.keys ?? [last, ...signsOf(here, last).map((sign) => sign.dataset.finding)]);
}

function show(here, moved = false) {
  const { place, listing, asked, findings, absent } = here.state;
  find(here, "#diagnosis-start").hidden = Boolean(place);
  find(here, "#diagnosis-ask").hidden = !place;
  if (!asked.length && !findings.length && !absent.length) hideDiagnosis(here.place);
  here.moved = moved; // the question takes the focus when it is there
  if (moved) here.place.scrollIntoView({ block: "start" });
  if (!place) return;
  if (listing) listSigns(here);
  else if (here.ready) waitForPython(here);
  else noteAndGoOn(here);
}

/** No answer may be tapped twice while Python looks for the next question. */
function waitForPython(here) {
  for (const chip of find(here, "#diagnosis-chips").children) chip.disabled = true;
}

function figuresOf({ findings, absent, plant, ...figures }) {
  return figures;
}

/** Ask Python for the ranking and the next question. */
async function answer(here) {
  if (!here.ready) return;
  const { fields, place, listing, on, asked, findings, absent, plant } = here.state;
  const number = ++here.count;
  const units = chosenUnits();
  const given = { ...(here.shown ?? fields), ...collect(here.form), plant, findings: findings.join(), absent: absent.join() };
  let reply;
  try {
    reply = await ask({ calculator: "diagnose", given, given_in: here.units, units, questioning: { place, asked, on: Boolean(on), unknown: here.unknown } });
  } catch (wrong) {
    say(here, `Python failed on this: ${wrong.message}`);
    return;
  }
  if (number !== here.count || here !== page || !here.place.isConnected) return;
  paintProblems(here.form, reply.problems ?? {});
  here.leftOut = reply.left_out || here.leftOut;
  here.unknown = [];
  if (units !== here.units) fill(here.form, Object.fromEntries(Object.keys(collect(here.form)).map((key) => [key, reply.given[key] ?? ""])));
  diagnosisAnew(here);
  here.units = document.documentElement.dataset.units = units;
  here.reply = reply;
  here.shown = figuresOf(reply.given); // in the units shown; those in the address are metric
  const { plant_key: plantKnown, ...kept } = reply.questioning; // without the keys that this book does not know
  here.state = { ...here.state, plant: plantKnown, findings: kept.findings, absent: kept.absent, asked: kept.asked, fields: figuresOf(reply.address) };
  remember(here, "replace");
  const known = kept.asked.length + kept.findings.length + kept.absent.length + Object.keys(here.state.fields).length > 0;
  if (place && !listing) showQuestion(here, reply.questioning);
  if (known) paintDiagnosis(here, reply);
  const first = reply.questioning.causes[0];
  say(here, [here.leftOut, known ? `Now first: ${first.name}, ${first.sure}, ${first.percent}.` : ""].filter(Boolean).join(" "));
}
