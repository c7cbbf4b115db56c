// Puts a painted answer, as Python made it, into the page.

export function element(name, properties = {}, ...children) {
  const made = Object.assign(document.createElement(name), properties);
  made.append(...children);
  return made;
}

const root = new URL("..", import.meta.url);

export function paintAnswer({ lead, assumed, lists, rows, notes, plots, downloads, onward }) {
  const place = document.querySelector("#assumed");
  place.textContent = assumed;
  place.hidden = !assumed;
  document.querySelector("#lead").replaceChildren(...lead.map(note));
  document.querySelector("#rows").replaceChildren(...rows.map(row));
  paintLists(lists);
  document.querySelector("#notes").replaceChildren(...notes.map(note));
  document.querySelector("#files").replaceChildren(...onward.map(link), ...downloads.map(file));
  document.querySelector("#plots").innerHTML = plots.join(""); // pictures that Python drew, their texts escaped there
}

function note({ level, text, first, links }) {
  const ways = links.map(({ label, page, given }) => {
    const url = new URL(page, root);
    url.search = String(new URLSearchParams(given));
    return element("a", { href: url.href, textContent: label });
  });
  return element("li", { className: first ? `${level} answer` : level }, text, ...ways.flatMap((way) => [" ", way]));
}

/** Lists as Python wrote them, their texts escaped there; what a person has opened stays open. */
function paintLists(lists) {
  const place = document.querySelector("#lists");
  const open = [...place.querySelectorAll("details[open]")].map((one) => one.id);
  place.innerHTML = lists.join("");
  for (const one of place.querySelectorAll("details")) one.open = open.includes(one.id);
}

/** A link to another calculator, filled with what was found here. */
function link({ label, calculator, inputs }) {
  return element("a", { className: "button", href: `../${calculator}/?${new URLSearchParams(inputs)}`, textContent: label });
}

function file({ label, file_name: name, media_type: type, text }) {
  const button = element("button", { type: "button", textContent: `Save: ${label.toLowerCase()}` });
  button.onclick = () => save(name, type, text);
  return button;
}

/** Offer a text that was made on this device as a file. */
export function save(name, type, text) {
  const link = element("a", { href: URL.createObjectURL(new Blob([text], { type })), download: name });
  link.click();
  URL.revokeObjectURL(link.href);
}

function row({ label, value, unit, help }) {
  const head = element("th", { scope: "row" }, label);
  if (help) head.append(" ", element("small", { textContent: help }));
  const cell = element("td", {}, value);
  if (unit) cell.append(" ", element("span", { className: "unit", textContent: unit }));
  return element("tr", {}, head, cell);
}
