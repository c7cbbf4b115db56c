// A calculator's page: passes what is typed to Python, paints what comes back. No formula stands here.

import { ask, start } from "./runtime.js";
import { chooseUnits, chosenUnits, keep, kept } from "./store.js";
import { clear, openBrief, sayBriefly } from "./brief.js";
import { collect, fill, openChanged, paintProblems } from "./form.js";
import { element, paintAnswer } from "./paint.js";
import { openRows } from "./rows.js";
import { openSuggestions } from "./suggest.js";

const PAUSE = 150; // ms after the last key before Python is asked

let page; // the calculator that is open: name, form, units of its fields, example, and last reply

export function open() {
  const place = document.querySelector("#calculator");
  const here = { name: place.dataset.calculator, form: place.querySelector("form"), units: "metric", asked: 0 };
  page = here;
  fillInToday(here.form);
  here.example = collect(here.form);
  fillFromAddress(here);
  openChanged(here.form, here.example);
  markDemo(place, location.search);
  here.form.addEventListener("input", () => {
    markDemo(place);
    soon(here);
  });
  here.form.addEventListener("submit", (event) => event.preventDefault());
  openRows(here.form, () => soon(here));
  openSuggestions(here.form, () => soon(here));
  openBrief(here.form);
  openUnits(here, place.querySelector("#unit-choice"));
  openButtons(here, place);
  showLoading(here, place.querySelector("#loading"));
}

function fillInToday(form) {
  for (const field of form.querySelectorAll("input[type=date]")) {
    const now = new Date();
    field.value ||= new Date(now - now.getTimezoneOffset() * 60_000).toISOString().slice(0, 10);
  }
}

function fillFromAddress(here) {
  const state = history.state?.given; // all that was typed, even what cannot be used yet
  if (state) {
    fill(here.form, state);
    setUnits(here, history.state.units);
    return;
  }
  const asked = Object.fromEntries(new URLSearchParams(location.search));
  for (const [key, text] of Object.entries(asked)) {
    if (Array.isArray(here.example[key])) asked[key] = rowsFrom(text) ?? here.example[key];
  }
  fill(here.form, asked);
  setUnits(here, "metric");
  const simple = !here.form.querySelector("fieldset");
  if (simple && chosenUnits() === "us" && same(collect(here.form), here.example)) {
    for (const field of here.form.querySelectorAll("[data-us]")) field.value = field.dataset.us;
    setUnits(here, "us"); // an untouched example need not wait for Python to be shown in US units
  }
}

/** Say which demo tank the address has opened; from the first change on it is none. */
function markDemo(place, search) {
  for (const said of place.querySelectorAll("[data-tank]")) {
    const link = place.querySelector(`.tries a[href="${CSS.escape(said.dataset.tank)}"]`);
    said.hidden = said.dataset.tank !== search;
    if (said.hidden) link.removeAttribute("aria-current");
    else link.setAttribute("aria-current", "true");
  }
}

function rowsFrom(text) {
  try {
    return JSON.parse(text);
  } catch {
    return undefined; // a link that was cut short
  }
}

function same(one, other) {
  return JSON.stringify(one) === JSON.stringify(other);
}

function setUnits(here, units) {
  here.units = units;
  document.documentElement.dataset.units = units;
  for (const button of document.querySelectorAll("#unit-choice button")) {
    button.setAttribute("aria-pressed", String(button.dataset.units === units));
  }
}

async function showLoading(here, loading) {
  const bar = loading.querySelector("progress");
  const late = setTimeout(() => { loading.hidden = false; }, 100); // a running Python answers before that
  const watch = (percent, text) => {
    bar.value = percent;
    loading.querySelector("span").textContent = text;
  };
  try {
    await start(watch);
    clearTimeout(late);
    loading.hidden = true;
    document.querySelector("#after").hidden = false;
    await answer(here, chosenUnits());
  } catch (wrong) {
    clearTimeout(late);
    loading.hidden = false;
    bar.hidden = true;
    const again = element("button", { type: "button", textContent: "Try again" });
    again.onclick = () => { bar.hidden = false; showLoading(here, loading); };
    loading.querySelector("span").replaceChildren(`Python could not start (${wrong.message}). The worked example below still holds. `, again);
  }
}

function soon(here) {
  document.querySelector(".result").classList.add("old");
  remember(here, location.search);
  clearTimeout(here.timer);
  here.timer = setTimeout(() => answer(here), PAUSE);
}

/** Ask Python with what stands in the form; `units` changes the fields to another system on the way. */
async function answer(here, units = here.units) {
  const number = ++here.asked;
  let reply;
  try {
    reply = await ask({ calculator: here.name, given: collect(here.form), given_in: here.units, units });
  } catch (wrong) {
    if (here === page) document.querySelector("#status").textContent = `Python failed on this: ${wrong.message}`;
    return;
  }
  if (number !== here.asked || here !== page) return; // typed on, or another page by now
  if (units !== here.units) fill(here.form, reply.given);
  setUnits(here, units);
  paintProblems(here.form, reply.problems ?? {});
  here.form.dispatchEvent(new CustomEvent("answered", { detail: reply }));
  const count = Object.keys(reply.problems ?? {}).length;
  if (count) sayWrong(count);
  if (!reply.answer) return;
  here.reply = reply;
  paintAnswer(reply.painted);
  sayBriefly(reply.painted.brief);
  const query = new URLSearchParams(reply.address).toString();
  remember(here, query ? `?${query}` : "");
}

function sayWrong(count) {
  const text = `Not computed: ${count === 1 ? "one field needs" : `${count} fields need`} another value.`;
  document.querySelector("#status").textContent = text;
  sayBriefly({ level: "caution", text });
  clear(document.activeElement?.closest("[aria-invalid]"));
}

/** The address carries what can be computed; the entry in the history carries all that was typed. */
function remember(here, search) {
  history.replaceState({ given: collect(here.form), units: here.units }, "", location.pathname + search + location.hash);
}

function openUnits(here, buttons) {
  if (!buttons) return;
  buttons.hidden = false;
  setUnits(here, here.units);
  buttons.onclick = ({ target }) => {
    const units = target.dataset.units;
    if (!units) return;
    chooseUnits(units);
    if (units !== here.units) answer(here, units);
  };
}

function openButtons(here, place) {
  const done = place.querySelector("#done");
  const names = place.querySelector("#keep-names");
  const list = () => names.replaceChildren(...[...new Set(kept().map((one) => one.tank))].map((value) => element("option", { value })));
  list();
  place.querySelector("#share").onclick = () => share(done);
  place.querySelector("#keep").onclick = () => {
    if (!here.reply) {
      done.textContent = "There is no answer to keep yet.";
      return;
    }
    const tank = place.querySelector("#keep-tank").value.trim() || "My tank";
    const lines = here.reply.painted.rows.map((row) => `${row.label}: ${row.value} ${row.unit}`.trim());
    const title = document.querySelector("h1").textContent;
    const room = keep({ tank, calculator: here.name, title, address: location.search, lines });
    done.textContent = room ? `Kept for ${tank}, on this device.` : "Not kept: this browser allows no storage here. Share the link instead.";
    list();
  };
  place.querySelector("#reset").onclick = () => {
    const units = here.units;
    fill(here.form, here.example);
    markDemo(place);
    setUnits(here, "metric");
    answer(here, units);
  };
}

export async function share(done, what = "calculation") {
  const link = { title: document.title, url: location.href };
  try {
    if (navigator.share) await navigator.share(link);
    else {
      await navigator.clipboard.writeText(link.url);
      done.textContent = `The link is on the clipboard. It opens this ${what}.`;
    }
  } catch {
    done.textContent = `Copy the address of this page: ${link.url}`;
  }
}
