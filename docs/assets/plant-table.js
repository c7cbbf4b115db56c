// Sorts and filters the table of plants; what it sorts and filters by was written by the build.
// How it is sorted, filtered and ticked stands in the address, for the way back and for a link to share.

import { writeEntry } from "./history-entry.js";

const MOST = 4;

export function open() {
  /** @type {HTMLFormElement} */
  const form = document.querySelector("#plant-table");
  const body = form.querySelector("tbody");
  for (const head of form.querySelectorAll("thead th")) {
    head.querySelector("button").onclick = () => {
      sort(body, head, head.getAttribute("aria-sort") === "ascending");
      keep(form);
    };
  }
  for (const choice of form.querySelectorAll("[data-filter]")) choice.onchange = () => { filter(form, body); keep(form); };
  for (const box of form.querySelectorAll("[name=plants]")) box.onchange = () => { tell(form); keep(form); };
  form.onsubmit = (event) => {
    const ticked = picked(form).map((box) => box.value);
    event.preventDefault();
    if (enough(ticked.length)) location.href = new URL(`?plants=${ticked.join(",")}`, form.action).href;
    else tell(form);
  };
  inChosenUnits(body);
  restore(form, body);
  keep(form);
  filter(form, body);
  tell(form);
}

/** One text a cell, where elsewhere a page holds both: hundreds of elements fewer. Sorting goes by the record's own figure. */
function inChosenUnits(body) {
  if (document.documentElement.dataset.units !== "us") return;
  for (const cell of body.querySelectorAll("[data-us]")) cell.textContent = cell.dataset.us;
}

/**
 * Set the table as the address says; what the page does not have is passed over, and what was tapped
 * before this script came stays.
 */
function restore(form, body) {
  const wanted = new URLSearchParams(location.search);
  for (const choice of form.querySelectorAll("[data-filter]")) {
    const value = wanted.get(choice.dataset.filter);
    if (value && [...choice.options].some((option) => option.value === value)) choice.value = value;
  }
  const ticked = (wanted.get("plants") ?? "").split(",");
  for (const box of form.querySelectorAll("[name=plants]")) box.checked ||= ticked.includes(box.value);
  const [key, way] = (wanted.get("sort") ?? "").split(" ");
  const head = [...form.querySelectorAll("thead th")].find((one) => one.dataset.key === key);
  if (head) sort(body, head, way === "down");
}

/** Write into the address how the table stands, in place of what it said. */
function keep(form) {
  const said = [...form.querySelectorAll("[data-filter]")].filter((choice) => choice.value).map((choice) => [choice.dataset.filter, choice.value]);
  const head = form.querySelector("thead th[aria-sort]");
  const down = head?.getAttribute("aria-sort") === "descending";
  if (head && (down || head.cellIndex)) said.push(["sort", down ? `${head.dataset.key} down` : head.dataset.key]);
  const ticked = picked(form).map((box) => box.value);
  if (ticked.length) said.push(["plants", ticked.join(",")]);
  const search = new URLSearchParams(said).toString();
  writeEntry(form, location.pathname + (search && `?${search}`) + location.hash);
}

function sort(body, head, down) {
  for (const other of head.parentElement.children) other.removeAttribute("aria-sort");
  head.setAttribute("aria-sort", down ? "descending" : "ascending");
  const at = head.cellIndex;
  const rows = [...body.rows].sort((one, other) => compare(one.cells[at].dataset.sorts, other.cells[at].dataset.sorts, down));
  body.append(...rows);
}

/** Figures as figures, words as words; what is not known comes last either way. */
function compare(one, other, down) {
  if (one === undefined || other === undefined) return Number(one === undefined) - Number(other === undefined);
  const order = one.localeCompare(other, "en", { numeric: false });
  const figures = Number(one) - Number(other);
  return (Number.isNaN(figures) ? order : figures) * (down ? -1 : 1);
}

function filter(form, body) {
  const wanted = [...form.querySelectorAll("[data-filter]")].filter((choice) => choice.value);
  for (const row of body.rows) row.hidden = !wanted.every((choice) => row.dataset[choice.dataset.filter] === choice.value);
  const shown = [...body.rows].filter((row) => !row.hidden).length;
  form.querySelector("#status").textContent = `${shown} of ${body.rows.length} plants shown.`;
}

function picked(form) {
  return [...form.querySelectorAll("[name=plants]:checked")];
}

function enough(count) {
  return count >= 2 && count <= MOST;
}

function tell(form) {
  const names = picked(form).map((box) => box.closest("th").querySelector("a").textContent);
  form.querySelector("#picked").textContent = enough(names.length) ? names.join(", ") : `Tick two to four; ${names.length} ticked.`;
}
