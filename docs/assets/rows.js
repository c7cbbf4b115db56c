// Lists of rows under the thumb: buttons that add a row already filled in, remove with a way back, order by
// a number, and buttons that move a number. What there is to add, and by how much, the form says.

import { addRow, entryOf, number, rowsOf, showUnits } from "./form.js";
import { element } from "./paint.js";

/** Let the buttons of a form work; `changed` hears of it. */
export function openRows(form, changed) {
  form.addEventListener("click", ({ target }) => {
    const button = target.closest("button");
    if (button?.matches(".add")) add(button);
    else if (button?.matches(".remove")) remove(button.closest(".row"), form, changed);
    else if (button?.matches(".step")) return move(button);
    else return;
    number(form);
    changed();
  });
  form.addEventListener("input", ({ target }) => target.matches("select") && showUnits(target.closest(".row") ?? form));
  // Not while the focus is in the list: a row that moves would slip from under the thumb.
  form.addEventListener("focusout", ({ target, relatedTarget }) => {
    const list = target.closest("[data-order]");
    if (!list || list.contains(relatedTarget) || !sort(list)) return;
    number(form);
    changed();
  });
}

/** Add a row; what its mould fills in already waits under the thumb, an empty one wants the keypad. */
function add(button) {
  const list = button.closest("fieldset.rows");
  forget(list);
  if (list.dataset.order) sort(list);
  const row = addRow(list, button.dataset.mould);
  if (list.dataset.order) follow(list, row);
  if (button.dataset.mould === "0") entryOf(row).focus();
  else {
    row.tabIndex = -1;
    row.focus();
  }
}

/** The new row comes one step after the last of the others. */
function follow(list, row) {
  const last = Math.max(0, ...rowsOf(list).filter((one) => one !== row).map((one) => place(list, one)).filter(Number.isFinite));
  write(orderEntry(list, row), last + Number(list.dataset.step));
}

function remove(row, form, changed) {
  const list = row.parentElement;
  forget(list);
  const back = element("button", { type: "button", textContent: "Put it back" });
  const said = element("p", { className: "undo" }, "Removed. ", back);
  said.setAttribute("role", "status");
  back.onclick = (event) => {
    event.stopPropagation();
    said.replaceWith(row);
    number(form);
    changed();
    entryOf(row).focus();
  };
  row.replaceWith(said);
  back.focus();
}

/** The way back to a removed row ends with the next one. */
function forget(list) {
  list.querySelector(":scope > .undo")?.remove();
}

/** Bring the rows into order; whether any had to move. */
function sort(list) {
  const rows = rowsOf(list);
  const ordered = rows.toSorted((one, other) => place(list, one) - place(list, other) || 0);
  if (ordered.every((row, at) => row === rows[at])) return false;
  const end = list.querySelector(":scope > template");
  for (const row of ordered) end.before(row);
  return true;
}

function orderEntry(list, row) {
  return entryOf(row.querySelector(`:scope > [data-key="${list.dataset.order}"]`));
}

/** Where a row stands in the order; one without a number stands last. */
function place(list, row) {
  return read(orderEntry(list, row)) ?? Infinity;
}

/** Move the number beside a button by one step, within its limits. */
function move(button) {
  const box = button.closest(".field");
  const entry = box.querySelector("input");
  const { step = 1, low, high } = { ...entry.dataset, ...box.querySelector("[data-choice]:not([hidden])")?.dataset };
  const to = (read(entry) ?? 0) + Number(button.dataset.move) * Number(step);
  write(entry, Math.min(Number(high), Math.max(Number(low), to)));
  entry.dispatchEvent(new Event("input", { bubbles: true }));
}

function read(entry) {
  const text = entry.value.trim().replace(",", ".");
  return text && Number.isFinite(Number(text)) ? Number(text) : undefined;
}

function write(entry, value) {
  entry.value = String(Number(value.toFixed(6)));
}
