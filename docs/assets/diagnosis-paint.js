// Paints a diagnosis as Python made it: the danger, the causes in order with their reasons, the answers given.

import { badge, element } from "./paint.js";
import { problemPicture, signPicture } from "./sign-picture.js";

export function paintChips(here, chips, list = false) {
  const box = here.place.querySelector("#diagnosis-chips");
  box.classList.toggle("long", list);
  box.replaceChildren(...chips.map(({ words, present, absent, asked = "", rivals = "", more = false }) => {
    const button = element("button", { type: "button" }, ...pictureOf(here, present), element("span", { textContent: words }));
    Object.assign(button.dataset, { present: present.join(), absent: absent.join(), asked, rivals });
    if (more) button.dataset.more = "1";
    return button;
  }));
}

/** What an answer shows where it says one thing; "yes" shows nothing, its question does. */
function pictureOf(here, present) {
  return present.length === 1 && !here.place.querySelector("#diagnosis-question svg") ? signPicture(here, present[0]) : [];
}

export function hideDiagnosis(place) {
  for (const name of ["#diagnosis-danger", "#diagnosis-result"]) place.querySelector(name).hidden = true;
}

export function paintDiagnosis(here, { questioning, address }) {
  const find = (name) => here.place.querySelector(name);
  find("#diagnosis-result").hidden = false;
  find("#diagnosis-enough").hidden = questioning.enough;
  find("#diagnosis-enough").textContent = questioning.unsure;
  const open = new Set([...here.place.querySelectorAll("#diagnosis-causes details[open]")].map((one) => one.dataset.problem));
  find("#diagnosis-causes").replaceChildren(...questioning.causes.map((one, at) => cause(here, one, questioning.done ? at === 0 || open.has(one.problem) : open.has(one.problem))));
  find("#diagnosis-else").textContent = `Something that is not in this book: ${questioning.something_else}.`;
  find("#diagnosis-notes").replaceChildren(...questioning.notes.map(({ level, text }) => element("li", { className: level, textContent: text })));
  find("#diagnosis-answers").replaceChildren(...questioning.answers.map(answerRow));
  find("#diagnosis-given").hidden = !questioning.answers.length;
  paintDanger(find("#diagnosis-danger"), here, questioning);
  const query = new URLSearchParams(address).toString();
  find("#diagnosis-form").href = new URL(`calculators/diagnose/${query ? `?${query}` : ""}`, here.root).href;
}

function paintDanger(box, here, questioning) {
  const was = box.hidden ? "" : box.textContent;
  box.hidden = !questioning.urgent;
  if (!questioning.urgent) return;
  const parts = [element("p", { className: "urgency", textContent: "Animals may be in danger. See to them first; leaves can wait." }), element("p", { textContent: questioning.first_action })];
  const links = element("p", {}, element("a", { href: new URL("danger/", here.root).href, textContent: "Animals in danger: step by step" }));
  if (questioning.first_for) links.append(" · ", element("a", { href: new URL(`problems/${questioning.first_for.problem}/`, here.root).href, textContent: questioning.first_for.name }));
  if (was !== [...parts, links].map((part) => part.textContent).join("")) box.replaceChildren(...parts, links); // said aloud only when it changes
}

function answerRow({ keys, answer, words }) {
  return element("li", {}, element("b", { textContent: `${answer}: ` }), element("span", { textContent: words }), taking(keys, words));
}

function taking(keys, words) {
  const button = element("button", { type: "button", className: "drop", textContent: "Take back" });
  button.dataset.keys = keys.join();
  button.setAttribute("aria-label", `Take back: ${words}`);
  return button;
}

function cause(here, one, open) {
  const meter = element("meter", { min: 0, max: 100, value: one.share });
  meter.setAttribute("aria-hidden", "true");
  const summary = element("summary", {}, ...problemPicture(here, one.problem), element("b", { textContent: one.name }), " ", badge(one.urgency, one.urgency_words), " ", element("span", { textContent: `${one.sure}, ${one.percent}` }), meter);
  const box = element("details", { open }, summary, ...body(here, one));
  box.dataset.problem = one.problem;
  return element("li", {}, box);
}

function body(here, one) {
  const page = new URL(`problems/${one.problem}/`, here.root).href;
  return [
    ...list("What speaks for it", one.because), ...list("What speaks against it", one.against),
    element("h3", { textContent: "First, safely" }), element("p", { textContent: one.first_action }),
    ...list("This week", one.this_week, "ol"), ...list("What to expect", one.expect),
    element("h3", { textContent: "If that does not come" }), element("p", { textContent: one.if_not }),
    ...(one.calculators.length ? [element("ul", { className: "cards" }, ...one.calculators.map((made) => calculator(here, made)))] : []),
    element("p", {}, element("a", { className: "button", href: page, textContent: "The whole page" })),
  ];
}

function list(title, texts, kind = "ul") {
  if (!texts.length) return [];
  return [element("h3", { textContent: title }), element(kind, {}, ...texts.map((text) => element("li", { textContent: text })))];
}

function calculator(here, { name, inputs, why }) {
  const query = new URLSearchParams(inputs).toString();
  const title = name.replaceAll("-", " ");
  const href = new URL(`calculators/${name}/${query ? `?${query}` : ""}`, here.root).href;
  return element("li", {}, element("a", { href }, element("b", { textContent: title.charAt(0).toUpperCase() + title.slice(1) }), element("br"), why));
}
