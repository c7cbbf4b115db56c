// Puts a painted answer, as Python made it, into the page.

import { painted } from "./trust.js";

export function element(name, properties = {}, ...children) {
  const made = Object.assign(document.createElement(name), properties);
  made.append(...children);
  return made;
}

/** How urgent a problem is: a line of its own with a word and a shape, never the end of a title. */
export function badge(urgency, words) {
  return element("em", { className: `badge ${urgency}`, textContent: words });
}

/** A plant's small picture, from the file that holds them all. */
export function thumb(root, slug) {
  return smallPicture(root, "thumbnails.svg", slug);
}

/** One of the small pictures of a file of ours, by its key. */
export function smallPicture(root, file, key) {
  const SVG = "http://www.w3.org/2000/svg";
  const picture = document.createElementNS(SVG, "svg");
  for (const [name, value] of Object.entries({ class: "thumb", viewBox: "0 0 48 48", "aria-hidden": "true" })) picture.setAttribute(name, value);
  const use = document.createElementNS(SVG, "use");
  use.setAttribute("href", new URL(`assets/${file}#${key}`, root).href);
  picture.append(use);
  return picture;
}

/**
 * Place an answer as Python wrote it, its texts escaped there. What a person has opened stays open; one that stands
 * there already stays, so that the worked example of a page is not laid out twice.
 */
export function paintAnswer(html) {
  const place = /** @type {HTMLElement} */ (document.querySelector("#answer"));
  const fresh = /** @type {HTMLElement} */ (place.cloneNode(false));
  fresh.innerHTML = painted(html);
  if (fresh.isEqualNode(place)) return;
  const open = [...place.querySelectorAll("details[open]")].map((one) => one.id);
  place.replaceChildren(...fresh.childNodes);
  for (const one of place.querySelectorAll("details")) one.open = open.includes(one.id);
  openFiles(place);
}

/** The buttons of an answer that save a file; each carries its text. */
export function openFiles(place) {
  for (const button of place.querySelectorAll("[data-file]")) {
    button.onclick = () => save(button.dataset.file, button.dataset.type, button.dataset.text);
  }
}

/** Offer a text that was made on this device as a file. */
export function save(name, type, text) {
  const link = element("a", { href: URL.createObjectURL(new Blob([text], { type })), download: name });
  link.click();
  URL.revokeObjectURL(link.href);
}
