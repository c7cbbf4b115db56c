// A calculator's form as plain data and back: fields, and lists whose rows can be added and removed.
// The form itself says what there is, by data-key; no list of fields stands here.

/** The fields and lists directly inside a form or a row. */
function parts(box) {
  return [...box.querySelectorAll(":scope > [data-key]")];
}

function rowsOf(list) {
  return [...list.querySelectorAll(":scope > .row")];
}

/** Boxes to tap stand for one text: the keys of those that are ticked, with commas between. */
function boxesOf(field) {
  return field.matches(".ticks") ? [...field.querySelectorAll("input")] : null;
}

function textOf(field) {
  return boxesOf(field)?.filter((box) => box.checked).map((box) => box.value).join(",") ?? entryOf(field).value;
}

function setText(field, text) {
  const boxes = boxesOf(field);
  if (!boxes) entryOf(field).value = text;
  const keys = text.match(/[\w-]+/g) ?? []; // with commas between, or as a list in JSON
  boxes?.forEach((box) => { box.checked = keys.includes(box.value); });
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

/** Put values into the form; a key that is not given stays as it is. */
export function fill(box, given) {
  for (const part of parts(box)) {
    const value = given[part.dataset.key];
    if (value === undefined) continue;
    if (!part.matches("fieldset")) setText(part, value ?? "");
    else if (Array.isArray(value)) fillRows(part, value);
  }
  number(box, "");
}

function fillRows(list, values) {
  rowsOf(list).forEach((row) => row.remove());
  for (const value of values) fill(add(list), value ?? {}); // from the mould, so that what is not given is at its default
}

function add(list) {
  const row = list.querySelector(":scope > template").content.firstElementChild.cloneNode(true);
  list.querySelector(":scope > template").before(row);
  return row;
}

/** Give each entry an id of its own, by its place, and tie its label, hint and problem to it. */
function number(box, within) {
  for (const part of parts(box)) {
    const path = within + part.dataset.key;
    const problem = part.querySelector(":scope > .problem");
    problem.id = `problem-${path}`;
    if (part.matches("fieldset")) {
      rowsOf(part).forEach((row, at) => number(row, `${path}-${at + 1}-`));
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

/** Let the buttons for rows work; `changed` hears of it. */
export function openRows(form, changed) {
  form.addEventListener("click", ({ target }) => {
    const list = target.closest("fieldset.rows");
    if (target.matches(".add")) entryOf(add(list)).focus();
    else if (target.matches(".remove")) {
      const next = target.closest(".row").nextElementSibling;
      target.closest(".row").remove();
      (next?.matches(".row") ? entryOf(next) : list.querySelector(":scope > .add")).focus();
    } else return;
    number(form, "");
    changed();
  });
}

/** Say each problem beside its field. Problems come by path, as in `plants[2].wet_g`. */
export function paintProblems(form, problems) {
  const byPath = Object.fromEntries(Object.entries(problems).map(([path, text]) => [path.replace(/\[(\d+)\]\.?/g, "-$1-").replace(/-$/, ""), text]));
  for (const place of form.querySelectorAll(".problem")) {
    const path = place.id.slice("problem-".length);
    // A problem with the second row or word of a list, `plants-2`, is said beside the list itself.
    const inside = Object.keys(byPath).find((key) => key === path || key.match(/^(.*)-\d+$/)?.[1] === path);
    place.textContent = inside ? byPath[inside] : "";
    place.hidden = !inside;
    const entry = place.parentElement.matches(".field:not(.ticks)") && entryOf(place.parentElement);
    if (!entry) continue;
    if (inside) entry.setAttribute("aria-invalid", "true");
    else entry.removeAttribute("aria-invalid");
  }
}
