// The photo of a surface: chosen, made small, marked, and handed to the form. Python counts; nothing is sent.
// The fields named here are the picture and its marks; every other field is the form's own affair.

import { collect, fill } from "./form.js";
import { openStage } from "./photo-stage.js";

const LONGEST = 160; // points that Python gets, on the longer side
const FINE = 10; // times as many in the picture that they are taken from: points, not means, keep colours pure
const FIRST_CORNERS = [[10, 10], [90, 10], [90, 90], [10, 90]]; // percent, until the keeper has dragged them
const CORNERS = "corners";

export function open() {
  const place = document.querySelector("#photo");
  const form = place.closest("form");
  const here = { place, form, what: CORNERS };
  here.stage = openStage(place.querySelector(".stage"), {
    moved: (corners) => change(here, { corners }),
    tapped: (at) => here.what !== CORNERS && change(here, { taps: [...given(here).taps, { what: here.what, ...at }] }),
  });
  for (const input of place.querySelectorAll("[data-photo]")) input.onchange = () => choose(here, input);
  openTools(here, place.querySelector(".photo-tools"));
  form.addEventListener("answered", ({ detail }) => show(here, detail));
  restore(here);
}

function given({ form }) {
  return collect(form);
}

/** Put something into the form, as if it had been typed. */
function change({ form }, values) {
  fill(form, values);
  form.dispatchEvent(new Event("input", { bubbles: true }));
}

async function choose(here, input) {
  const [file] = input.files;
  input.value = ""; // the same file can be chosen again
  if (!file) return;
  here.unreadable = "";
  say(here, ""); // before the picture comes, so that nothing moves under the thumb after it
  try {
    const fine = await read(file);
    const small = sampled(fine);
    here.fine = fine;
    here.stage.open(fine);
    change(here, {
      pixels: octets(small), width_px: String(small.width), height_px: String(small.height), more_percent: "0",
      taps: [], corners: FIRST_CORNERS.map(([x, y]) => ({ x_percent: String(x), y_percent: String(y) })),
    });
  } catch {
    here.unreadable = "This file is no picture that the browser can read. Take the photo again, or choose a JPEG or PNG.";
    say(here, here.unreadable); // and again after the answer that the chosen file sets off
  }
}

/** The photo on a canvas, the right way up, no larger than is needed. */
async function read(file) {
  const whole = await createImageBitmap(file, { imageOrientation: "from-image" });
  const scale = Math.min(1, (LONGEST * FINE) / Math.max(whole.width, whole.height));
  const fine = canvas(Math.round(whole.width * scale), Math.round(whole.height * scale));
  const pen = fine.getContext("2d", { willReadFrequently: true });
  pen.imageSmoothingQuality = "high";
  pen.drawImage(whole, 0, 0, fine.width, fine.height);
  whole.close();
  return fine;
}

/** Every so many points of a picture. */
function sampled(fine) {
  const step = Math.max(1, Math.max(fine.width, fine.height) / LONGEST);
  const small = canvas(Math.round(fine.width / step), Math.round(fine.height / step));
  const pen = small.getContext("2d");
  pen.imageSmoothingEnabled = false;
  pen.drawImage(fine, 0, 0, small.width, small.height);
  return pen.getImageData(0, 0, small.width, small.height);
}

function canvas(width, height) {
  return Object.assign(document.createElement("canvas"), { width: Math.max(1, width), height: Math.max(1, height) });
}

/** Red, green and blue of each point, as base64. */
function octets({ data }) {
  let text = "";
  for (let at = 0; at < data.length; at += 4) text += String.fromCharCode(data[at], data[at + 1], data[at + 2]);
  return btoa(text);
}

/** After the phone slept or the page was left: the small picture is in the form, and is shown instead. */
function restore(here) {
  const { pixels, width_px: width, height_px: height } = given(here);
  if (!pixels || here.fine) return;
  const small = canvas(Number(width), Number(height));
  const pen = small.getContext("2d");
  const image = pen.createImageData(small.width, small.height);
  const text = atob(pixels);
  for (let point = 0; point < small.width * small.height; point++) {
    for (let channel = 0; channel < 3; channel++) image.data[4 * point + channel] = text.charCodeAt(3 * point + channel);
    image.data[4 * point + 3] = 255;
  }
  pen.putImageData(image, 0, 0);
  here.fine = canvas(small.width * 4, small.height * 4);
  here.fine.getContext("2d").drawImage(small, 0, 0, here.fine.width, here.fine.height);
  here.stage.open(here.fine);
}

/** Show what Python made of it. */
function show(here, { answer, painted, problems }) {
  const { pixels, corners, taps } = given(here);
  const chosen = Boolean(pixels);
  if (!chosen) here.fine = null; // back to the example
  here.stage.element.hidden = here.place.querySelector(".photo-tools").hidden = !chosen;
  const counted = here.place.querySelector(".counted");
  counted.hidden = !chosen || !answer;
  const marks = [...here.form.querySelectorAll("[data-mark]")].map((field) => field.dataset.key).concat(here.place.dataset.key);
  say(here, here.unreadable || Object.entries(problems ?? {}).filter(([key]) => marks.includes(key.match(/^\w+/)[0])).map(([, text]) => text).join(" "));
  if (!chosen) return;
  here.stage.show({ corners, taps, mask: answer?.outputs.mask, shapes: answer?.outputs.shapes ?? [] });
  if (answer) counted.textContent = painted.lines.slice(0, 4).join(". ");
}

function say(here, text) {
  const problem = here.place.querySelector(".photo-problem");
  problem.textContent = text;
  problem.hidden = !text;
}

function openTools(here, tools) {
  tools.addEventListener("click", ({ target }) => {
    const { what, more } = target.dataset;
    if (what) {
      here.what = what;
      here.stage.forTaps(what !== CORNERS);
      for (const button of tools.querySelectorAll("[data-what]")) button.setAttribute("aria-pressed", String(button === target));
    } else if (more) change(here, { more_percent: String(Number(given(here).more_percent) + Number(more)) });
    else if (target.matches("[data-undo]")) change(here, { taps: given(here).taps.slice(0, -1) });
    else if (target.matches("[data-hide]")) here.stage.hideMask(press(target));
    else if (target.matches("[data-numbers]")) {
      const shown = press(target);
      for (const field of here.form.querySelectorAll("[data-mark]")) field.hidden = !shown;
    }
  });
}

function press(button) {
  const pressed = button.getAttribute("aria-pressed") !== "true";
  button.setAttribute("aria-pressed", String(pressed));
  return pressed;
}
