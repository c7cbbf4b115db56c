// Puts a painted answer, as Python made it, into the page.

export function element(name, properties = {}, ...children) {
  const made = Object.assign(document.createElement(name), properties);
  made.append(...children);
  return made;
}

export function paintAnswer({ rows, notes, plots, downloads, onward }) {
  document.querySelector("#result-title").textContent = "Result";
  document.querySelector(".result").classList.remove("old");
  document.querySelector("#rows").replaceChildren(...rows.map(row));
  document.querySelector("#notes").replaceChildren(...notes.map(({ level, text }) => element("li", { className: level, textContent: text })));
  document.querySelector("#files").replaceChildren(...onward.map(link), ...downloads.map(file));
  document.querySelector("#plots").innerHTML = plots.join(""); // pictures that Python drew, their texts escaped there
  document.querySelector("#status").textContent = "Result updated.";
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
