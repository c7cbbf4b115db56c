// A calculator's form as plain data and back: fields, and lists of rows.
// The form itself says what there is, by data-key; no list of fields stands here.

/** The fields and lists of a form or a row; those of a form may stand in parts, and together in a row. */
export function parts(box) {
  return [...box.querySelectorAll(":is(:scope, :scope > .part > div, :scope > .together, :scope > .part > div > .together) > [data-key]")];
}

export function rowsOf(list) {
  return [...list.querySelectorAll(":scope > .row")];
}

/** Boxes to tap stand for one text: the keys of those that are ticked, with commas between. */
function boxesOf(field) {
  return field.matches(".ticks") ? [...field.querySelectorAll("input")] : null;
}

function textOf(field) {
  return boxesOf(field)?.filter((box) => box.checked).map((box) => box.value).join(",") ?? entryOf(field).value;
}

function setText(field, value) {
  const text = typeof value === "object" ? JSON.stringify(value) : String(value); // what a link holds may be anything
  const boxes = boxesOf(field);
  if (!boxes) {
    const entry = entryOf(field);
    // A choice that there is not leaves the form at its own, a row with none; Python says which there are.
    const known = !(entry instanceof HTMLSelectElement) || [...entry.options].some(({ value: key }) => key === text);
    if (!known && !entry.closest(".row")) return;
    entry.value = text;
    return;
  }
  /** @type {string[]} */
  const keys = text.match(/[\w-]+/g) ?? []; // with commas between, or as a list in JSON
  for (const box of boxes) box.checked = keys.includes(box.value);
}

export function entryOf(field) {
  return field.querySelector("input, select");
}

/** All that stands in the form: text by key, lists as lists of the same. */
export function collect(box) {
  return Object.fromEntries(parts(box).map((part) => [
    part.dataset.key, part.matches("fieldset") ? rowsOf(part).map(collect) : textOf(part),
  ]));
}

/**
 * Whether a page's form stands as it does when nobody has filled it: `empty`, as it was collected then.
 * @param {any} here
 */
export function isBlank({ form, empty }) {
  return JSON.stringify(collect(form)) === JSON.stringify(empty);
}

/** Put values into the form; a key that is not given stays as it is. */
export function fill(box, given) {
  for (const part of parts(box)) {
    const value = Object.hasOwn(given, part.dataset.key) ? given[part.dataset.key] : undefined;
    if (value === undefined) continue;
    if (!part.matches("fieldset")) setText(part, value ?? "");
    else if (Array.isArray(value)) fillRows(part, value);
  }
  number(box);
}

function fillRows(list, values) {
  for (const row of rowsOf(list)) row.remove();
  for (const value of values) fill(addRow(list), Object(value)); // from the mould: what is not given is as in a new row
}

/** A new row at the end of a list, from one of its moulds; the first is the plain one. */
export function addRow(list, mould = "0") {
  const row = list.querySelector(`:scope > template[data-mould="${mould}"]`).content.firstElementChild.cloneNode(true);
  list.querySelector(":scope > template").before(row);
  return row;
}

/** Give each entry an id of its own, by its place, and tie its label, hint and problem to it. */
export function number(box, within = "") {
  showUnits(box);
  showGhosts(box);
  for (const part of parts(box)) {
    const path = within + part.dataset.key;
    const problem = part.querySelector(":scope > .problem");
    problem.id = `problem-${path}`;
    if (part.matches("fieldset")) {
      const name = part.querySelector(":scope > legend").textContent;
      rowsOf(part).forEach((row, at) => {
        row.setAttribute("aria-label", `${name}, ${at + 1}`);
        number(row, `${path}-${at + 1}-`);
      });
      continue;
    }
    part.querySelector(".hint").id = `hint-${path}`;
    if (boxesOf(part)) part.querySelector("b").id = `label-${path}`;
    const entry = boxesOf(part) ? part : entryOf(part);
    if (boxesOf(part)) entry.setAttribute("aria-labelledby", `label-${path}`);
    else entry.id = part.querySelector("label").htmlFor = `in-${path}`;
    entry.setAttribute("aria-describedby", `hint-${path} problem-${path}`);
  }
}

/** Where a unit goes with what is chosen in the same row, show the one that does. */
export function showUnits(box) {
  for (const unit of box.querySelectorAll("[data-choice]")) {
    const chosen = unit.closest(".row").querySelector(`:scope > [data-key="${unit.dataset.by}"]`);
    if (chosen) unit.hidden = entryOf(chosen).value !== unit.dataset.choice;
  }
}

/** What shows through an empty entry, in the units that the page shows. */
export function showGhosts(box) {
  const us = document.documentElement.dataset.units === "us";
  for (const entry of box.querySelectorAll("[data-ghost]")) entry.placeholder = us ? entry.dataset.ghostUs : entry.dataset.ghost;
}

/** Open the closed parts in which something else stands than at first. */
export function openFilled(form, empty) {
  for (const part of form.querySelectorAll("details.part")) {
    const inside = collect(part.querySelector(":scope > div"));
    if (Object.entries(inside).some(([key, value]) => JSON.stringify(value) !== JSON.stringify(empty[key]))) part.open = true;
  }
}

/** A path such as `plants[2].wet_g`, as the ids of the form have it. */
function idOf(path) {
  return path.replace(/\[(\d+)\]\.?/g, "-$1-").replace(/-$/, "");
}

/** Say beside a field how it was understood, or that its name is not known. */
export function paintRemarks(form, remarks) {
  for (const old of form.querySelectorAll(".remark")) old.remove();
  for (const [path, text] of Object.entries(remarks)) {
    const place = form.querySelector(`#problem-${CSS.escape(idOf(path))}`);
    place?.before(Object.assign(document.createElement("p"), { className: "remark", textContent: text }));
  }
}

/** Say each problem beside its field. Problems come by path. */
export function paintProblems(form, problems) {
  const byPath = Object.fromEntries(Object.entries(problems).map(([path, text]) => [idOf(path), text]));
  for (const place of form.querySelectorAll(".problem")) {
    const path = place.id.slice("problem-".length);
    // A problem with the second row or word of a list, `plants-2`, is said beside the list itself.
    const inside = Object.keys(byPath).find((key) => key === path || key.match(/^(.*)-\d+$/)?.[1] === path);
    place.textContent = inside ? byPath[inside] : "";
    place.hidden = !inside;
    const entry = place.parentElement.matches(".field:not(.ticks)") && entryOf(place.parentElement);
    if (!entry) continue;
    if (inside) {
      entry.setAttribute("aria-invalid", "true");
      place.closest("details")?.setAttribute("open", "");
    }
    else entry.removeAttribute("aria-invalid");
  }
}

/** The first entry, or list, that a problem is said of; null where there is none. */
export function firstWrong(form) {
  return entryBeside(form.querySelector(".problem:not([hidden])"));
}

/** The first entry, or list, of those that are still needed; null where there is none. */
export function firstNeeded(form, paths = []) {
  return paths.map((path) => entryBeside(form.querySelector(`#problem-${CSS.escape(idOf(path))}`))).find(Boolean) ?? null;
}

function entryBeside(place) {
  return place && (entryOf(place.parentElement) ?? place.parentElement.querySelector("button"));
}
