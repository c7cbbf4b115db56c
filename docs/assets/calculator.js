// A calculator's page: passes what is typed to Python, paints what comes back. No formula stands here.

import { ask, start } from "./runtime.js";
import { chooseUnits, chosenUnits, keep, kept } from "./store.js";
import { element, paintAnswer } from "./paint.js";

const PAUSE = 150; // ms after the last key before Python is asked

let page; // what belongs to the calculator that is open: its name, form, units, and the last answer

export function open() {
  const place = document.querySelector("#calculator");
  page = { name: place.dataset.calculator, form: place.querySelector("form"), units: "metric", asked: 0 };
  const here = page;
  fillFromAddress(here);
  page.form.addEventListener("input", () => soon(here));
  page.form.addEventListener("submit", (event) => event.preventDefault());
  openUnits(here, place.querySelector("#units"));
  openButtons(here, place);
  showLoading(here, place.querySelector("#loading"));
}

function fillFromAddress(here) {
  const asked = new URLSearchParams(location.search);
  const state = history.state?.given; // what was typed, even if it cannot be used yet
  for (const field of here.form.elements) {
    if (!field.name) continue;
    field.dataset.example = field.value;
    if (state?.[field.name] !== undefined) field.value = state[field.name];
    else if (asked.has(field.name)) field.value = asked.get(field.name);
  }
  here.units = state ? history.state.units : "metric";
  document.documentElement.dataset.units = here.units;
  const untouched = !state && ![...here.form.elements].some((field) => field.value !== field.dataset.example);
  if (untouched && chosenUnits() === "us") {
    for (const field of here.form.elements) if (field.dataset.us) field.value = field.dataset.us;
    setUnits(here, "us");
  }
}

function setUnits(here, units) {
  here.units = units;
  document.documentElement.dataset.units = units;
  for (const button of document.querySelectorAll("#units button")) {
    button.setAttribute("aria-pressed", String(button.dataset.units === units));
  }
}

function given(here) {
  return Object.fromEntries(new FormData(here.form));
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
    reply = await ask({ calculator: here.name, given: given(here), given_in: here.units, units });
  } catch (wrong) {
    document.querySelector("#status").textContent = `Python failed on this: ${wrong.message}`;
    return;
  }
  if (number !== here.asked || here !== page) return; // typed on, or another page by now
  if (units !== here.units) {
    for (const [name, text] of Object.entries(reply.given)) here.form.elements[name].value = text;
  }
  setUnits(here, units);
  paintProblems(here, reply.problems ?? {});
  if (reply.answer) {
    here.reply = reply;
    paintAnswer(reply.painted);
    const query = new URLSearchParams(reply.address).toString();
    remember(here, query ? `?${query}` : "");
  }
}

/** The address carries what can be computed; the entry in the history carries all that was typed. */
function remember(here, search) {
  history.replaceState({ given: given(here), units: here.units }, "", location.pathname + search + location.hash);
}

function paintProblems(here, problems) {
  for (const field of here.form.elements) {
    if (!field.name) continue;
    const text = problems[field.name];
    const place = document.getElementById(`problem-${field.name}`);
    place.textContent = text ?? "";
    place.hidden = !text;
    field.toggleAttribute("aria-invalid", Boolean(text));
    if (text) field.setAttribute("aria-invalid", "true");
  }
  const count = Object.keys(problems).length;
  if (count) document.querySelector("#status").textContent = `Not computed: ${count === 1 ? "one field needs" : `${count} fields need`} another value.`;
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
  const names = place.querySelector("#tank-names");
  const list = () => names.replaceChildren(...[...new Set(kept().map((one) => one.tank))].map((value) => element("option", { value })));
  list();
  place.querySelector("#share").onclick = async () => {
    const link = { title: document.title, url: location.href };
    try {
      if (navigator.share) await navigator.share(link);
      else {
        await navigator.clipboard.writeText(link.url);
        done.textContent = "The link is on the clipboard. It opens this calculation.";
      }
    } catch {
      done.textContent = `Copy the address of this page: ${link.url}`;
    }
  };
  place.querySelector("#keep").onclick = () => {
    if (!here.reply) {
      done.textContent = "There is no answer to keep yet.";
      return;
    }
    const tank = place.querySelector("#tank").value.trim() || "My tank";
    const lines = here.reply.painted.rows.map((row) => `${row.label}: ${row.value} ${row.unit}`.trim());
    const title = document.querySelector("h1").textContent;
    const room = keep({ tank, calculator: here.name, title, address: location.search, lines });
    done.textContent = room ? `Kept for ${tank}, on this device.` : "Not kept: this browser allows no storage here. Share the link instead.";
    list();
  };
  place.querySelector("#reset").onclick = () => {
    for (const field of here.form.elements) {
      if (field.name) field.value = (here.units === "us" && field.dataset.us) || field.dataset.example;
    }
    answer(here);
  };
}
