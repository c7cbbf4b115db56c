// A sheet that slides over the page from below, with large targets; and the line that says what was done, with Undo.

import { element } from "../paint.js";
import { twinOf } from "./focus.js";

const SHOWN = 12_000; // ms that the line stays; the log of the tank takes back what is older

let fading;

/** An open, empty sheet with a title; it goes when it is closed. */
export function openSheet(title) {
  document.querySelector("dialog.sheet")?.remove();
  const name = element("h2", { id: "sheet-title", textContent: title, tabIndex: -1 });
  const close = element("button", { type: "button", className: "sheet-close", textContent: "Close" });
  const body = element("div", { className: "sheet-body" });
  const sheet = element("dialog", { className: "sheet" }, element("div", { className: "sheet-head" }, name, close), body);
  sheet.setAttribute("aria-labelledby", "sheet-title");
  close.onclick = () => sheet.close();
  sheet.onclick = ({ target }) => target === sheet && sheet.close(); // beside the sheet
  const opener = document.activeElement;
  sheet.onclose = () => {
    sheet.remove();
    if (!opener.isConnected) twinOf(opener)?.focus(); // what was logged painted its card anew meanwhile
  };
  document.body.append(sheet);
  sheet.showModal();
  name.focus();
  const problem = element("p", { className: "problem", hidden: true });
  problem.setAttribute("role", "alert");
  body.before(problem);
  /** @param {string} text why it could not be done, said in the sheet itself; all that was entered stays */
  const say = (text) => {
    problem.textContent = text;
    problem.hidden = !text;
    if (text) problem.scrollIntoView({ block: "nearest" });
  };
  return { sheet, name, body, say, close: () => sheet.close() };
}

/** Say below what was done; `undo` takes it back. */
export function saidBelow(text, undo) {
  document.querySelector("#shelf-done")?.remove();
  clearTimeout(fading);
  const line = element("div", { id: "shelf-done", className: "shelf-done" }, element("span", { textContent: text }));
  line.setAttribute("role", "status");
  line.tabIndex = -1;
  if (undo) {
    const back = element("button", { type: "button", textContent: "Undo" });
    back.onclick = async () => {
      await undo();
      saidBelow("Undone.").focus(); // the button that had it is gone
    };
    line.append(back);
  }
  document.body.append(line);
  fading = setTimeout(() => line.remove(), SHOWN);
  return line;
}

/** A large button. */
export function tap(words, act, { small = "", pressed = undefined, name = "" } = {}) {
  const button = element("button", { type: "button", className: "tap" }, element("span", { textContent: words }));
  if (small) button.append(element("small", { textContent: small }));
  if (pressed !== undefined) button.setAttribute("aria-pressed", String(pressed));
  if (name) button.setAttribute("aria-label", name);
  button.onclick = act;
  return button;
}

/** A group of large buttons under a heading. */
export function taps(heading, buttons) {
  const group = element("div", { className: "taps" }, ...buttons);
  group.setAttribute("role", "group");
  group.setAttribute("aria-label", heading);
  return element("section", { className: "taps-part" }, element("h3", { textContent: heading }), group);
}
