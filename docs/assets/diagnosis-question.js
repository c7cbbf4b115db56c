// The question of the moment: the signs of a place, what the build wrote down to be asked next, or what Python asks.

import { element } from "./paint.js";
import { paintChips } from "./diagnosis-paint.js";
import { signPicture } from "./sign-picture.js";

function find(here, name) {
  return here.place.querySelector(name);
}

export function signsOf(here, place) {
  return [...here.place.querySelectorAll(`details[data-place="${CSS.escape(place)}"] [data-finding]`)];
}

function putQuestion(here, above, words, chips, list = false) {
  find(here, "#diagnosis-count").textContent = above;
  find(here, "#diagnosis-question").replaceChildren(...shownBeside(here, chips, list), words);
  paintChips(here, chips, list);
  if (here.moved) find(here, "#diagnosis-question").focus({ preventScroll: true });
  here.moved = false;
}

/** The drawing of what a question with one yes is about. */
function shownBeside(here, chips, list) {
  const yes = chips.filter(({ present }) => present.join());
  return !list && yes.length === 1 && yes[0].present.length === 1 ? signPicture(here, yes[0].present[0]) : [];
}

function nameOf(here, place) {
  return here.place.querySelector(`a[data-place="${CSS.escape(place)}"]`)?.getAttribute("aria-label")
    ?? here.place.querySelector(`details[data-place="${CSS.escape(place)}"] summary`)?.firstChild.textContent.trim() ?? place;
}

export function listSigns(here) {
  const { place, findings, absent } = here.state;
  const left = signsOf(here, place).filter((sign) => ![...findings, ...absent].includes(sign.dataset.finding));
  putQuestion(here, nameOf(here, place), "What do you see there?", [
    ...left.map((sign) => ({ words: sign.textContent, present: [sign.dataset.finding], absent: [], rivals: sign.dataset.rivals })),
    { words: "None of these", present: [], absent: left.map((sign) => sign.dataset.finding), asked: place },
    { words: "Don’t know", present: [], absent: [], asked: place },
  ], true);
}

/** Until Python is there: what the build wrote down to be asked after the signs that were tapped. */
export function noteAndGoOn(here) {
  const { asked, place } = here.state;
  const signs = [...here.place.querySelectorAll("[data-then]")].filter((sign) => asked.includes(sign.dataset.finding));
  const names = signs.flatMap((sign) => sign.dataset.then.split(" "));
  const ready = [...find(here, "#diagnosis-questions").content.children];
  const keysOf = (one) => [one.dataset.finding, ...[...one.children].flatMap((chip) => `${chip.dataset.present},${chip.dataset.absent}`.split(","))];
  const next = asked.length < Number(here.place.dataset.most) && names.map((name) => ready.find((one) => one.dataset.question === name))
    .find((one) => one && !keysOf(one).some((key) => key && asked.includes(key)));
  const chips = next ? [...next.children].map(({ textContent: words, dataset: { present, absent } }) => ({
    words, present: present.split(","), absent: absent.split(","), asked: next.dataset.finding,
  })) : [];
  putQuestion(here, nameOf(here, place), next ? next.dataset.words : "Your answers are noted. Python is loading; it puts the causes in order.", chips);
}

export function showQuestion(here, questioning) {
  const { place, asked } = here.state;
  if (questioning.done || !questioning.ask) {
    const more = questioning.ask ? [{ words: "Ask me more", more: true, present: [], absent: [] }] : [];
    putQuestion(here, `${nameOf(here, place)} · ${asked.length} answers`, "Here is what it may be.", more);
    if (questioning.ask) find(here, "#diagnosis-chips").append(element("p", { className: "hint", textContent: `What would tell most now: ${questioning.ask.words}` }));
    return;
  }
  const most = questioning.taps < questioning.most_taps ? ` of at most ${questioning.most_taps}` : "";
  putQuestion(here, `${nameOf(here, place)} · question ${questioning.taps + 1}${most}`, questioning.ask.words, questioning.ask.chips.map((chip) => ({ ...chip, asked: questioning.ask.finding })));
}
