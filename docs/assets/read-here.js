// Opens in place what a mark points to at the foot of its page: a source, or a plant of a picture. Where a browser
// knows no popover the link goes there, as without script.

import { element } from "./paint.js";

const MARKS = 'a[href^="#source-"], a[href^="#spot-"]';

export function openReadHere() {
  document.addEventListener("click", (event) => {
    if (event.defaultPrevented || event.button || event.ctrlKey || event.metaKey || event.shiftKey || event.altKey) return;
    /** @type {HTMLAnchorElement | SVGAElement} */
    const link = event.target instanceof Element ? event.target.closest(MARKS) : null;
    const target = link && document.getElementById(link.getAttribute("href").slice(1));
    const item = target?.closest("li");
    if (!item || !("popover" in HTMLElement.prototype)) return;
    event.preventDefault();
    show(link, item);
  });
}

/** A sheet over the lower edge, until it is closed or something else is touched. */
function show(link, item) {
  document.querySelector("#read-here")?.remove();
  const name = words(link);
  const text = element("div", {}, ...item.cloneNode(true).childNodes);
  for (const one of text.querySelectorAll("[id]")) one.removeAttribute("id");
  const close = element("button", { type: "button", textContent: "Close" });
  const sheet = element("aside", { id: "read-here", popover: "auto", ariaLabel: name }, element("b", { textContent: name }), text, close);
  close.onclick = () => sheet.hidePopover();
  sheet.addEventListener("toggle", ({ newState }) => {
    if (newState === "open") return;
    if (sheet.contains(document.activeElement)) link.focus({ preventScroll: true });
    sheet.remove();
  });
  document.body.append(sheet);
  sheet.showPopover();
  close.focus({ preventScroll: true });
}

/** What the mark is of, and how sure the claim that it stands at. */
function words(link) {
  if (link.getAttribute("href").startsWith("#spot-")) return link.getAttribute("aria-label");
  const sure = link.closest("[title]")?.title;
  const number = `Source ${link.textContent.replace(/\D/g, "")}`;
  return sure ? `${number}: ${sure}` : number;
}
