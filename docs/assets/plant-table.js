// Sorts and filters the table of plants; what it sorts and filters by was written by the build.

import { element } from "./paint.js";

const MOST = 4;

export function open() {
  const form = document.querySelector("#plant-table");
  const body = form.querySelector("tbody");
  for (const head of form.querySelectorAll("thead th")) {
    const button = element("button", { type: "button" }, ...head.childNodes);
    button.onclick = () => sort(body, head);
    head.replaceChildren(button);
  }
  form.querySelector(".filters").hidden = false;
  for (const choice of form.querySelectorAll("[data-filter]")) choice.onchange = () => filter(form, body);
  for (const box of form.querySelectorAll("[name=plants]")) box.onchange = () => tell(form);
  form.onsubmit = (event) => {
    const ticked = picked(form).map((box) => box.value);
    event.preventDefault();
    if (enough(ticked.length)) location.href = new URL(`?plants=${ticked.join(",")}`, form.action).href;
    else tell(form);
  };
  filter(form, body);
  tell(form);
}

function sort(body, head) {
  const down = head.getAttribute("aria-sort") === "ascending";
  for (const other of head.parentElement.children) other.removeAttribute("aria-sort");
  head.setAttribute("aria-sort", down ? "descending" : "ascending");
  const at = head.cellIndex;
  const rows = [...body.rows].sort((one, other) => compare(one.cells[at].dataset.sorts, other.cells[at].dataset.sorts, down));
  body.append(...rows);
}

/** Figures as figures, words as words; what is not known comes last either way. */
function compare(one, other, down) {
  if (one === undefined || other === undefined) return (one === undefined) - (other === undefined);
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
  const names = picked(form).map((box) => box.closest("tr").querySelector("i").textContent);
  form.querySelector("#picked").textContent = enough(names.length) ? names.join(", ") : `Tick two to four; ${names.length} ticked.`;
}
