// What was kept on this device, by tank; to open again, remove, save to a file and read back.

import { isKept, kept, replaceKept } from "./store.js";
import { element, save as saveFile } from "./paint.js";

const LINES_SHOWN = 4;

export function open(root) {
  paint(root);
  document.querySelector("#after").hidden = false;
  document.querySelector("#save").onclick = save;
  document.querySelector("#load").onchange = ({ target }) => load(root, target);
}

function paint(root) {
  const byTank = Map.groupBy ? Map.groupBy(kept(), (one) => one.tank) : grouped(kept());
  const parts = [...byTank].map(([tank, list]) => element("section", {}, element("h2", { textContent: tank }), ...list.toReversed().map((one) => card(root, one))));
  document.querySelector("#tanks").replaceChildren(...parts);
  document.querySelector("#explain").textContent = parts.length
    ? "Kept on this device alone, the newest first. A link opens the calculation again with its figures."
    : "Nothing kept yet. Every calculator has a button that keeps its figures here, by tank, on this device alone.";
}

function grouped(list) {
  const groups = new Map();
  for (const one of list) groups.set(one.tank, [...(groups.get(one.tank) ?? []), one]);
  return groups;
}

function card(root, one) {
  const page = one.page ?? `calculators/${one.calculator}/`;
  const link = element("a", { href: new URL(page + one.address, root).href, textContent: one.title });
  const when = new Date(one.when).toLocaleString(undefined, { dateStyle: "medium", timeStyle: "short" });
  const remove = element("button", { type: "button", textContent: "Remove" });
  const made = element("div", { className: "kept" }, element("p", {}, element("b", {}, link), ` ${when}`), ...one.lines.slice(0, LINES_SHOWN).map((text) => element("p", { textContent: text })), remove);
  remove.onclick = () => {
    replaceKept(kept().filter((other) => other.id !== one.id));
    const undo = element("button", { type: "button", textContent: "Put it back" });
    undo.onclick = () => {
      replaceKept([...kept(), one].sort((a, b) => a.when.localeCompare(b.when)));
      paint(root);
    };
    made.replaceChildren(element("p", { textContent: `${one.title} removed.` }), undo);
  };
  return made;
}

function save() {
  saveFile("my-tanks.json", "application/json", JSON.stringify(kept(), null, 1));
  say("Saved as my-tanks.json.");
}

async function load(root, input) {
  const [file] = input.files;
  input.value = "";
  if (!file) return;
  let list;
  try {
    list = JSON.parse(await file.text());
  } catch {
    return say(`${file.name} is not a file that this page saved. Nothing was changed.`);
  }
  if (!Array.isArray(list) || !list.every(isKept)) return say(`${file.name} holds something else than kept calculations. Nothing was changed.`);
  const known = new Set(kept().map((one) => one.id));
  const fresh = list.filter((one) => !known.has(one.id));
  const room = replaceKept([...kept(), ...fresh].sort((a, b) => a.when.localeCompare(b.when)));
  say(room ? `${fresh.length} read, ${list.length - fresh.length} were here already.` : "This device has no room for them. Nothing was changed.");
  paint(root);
}

function say(text) {
  document.querySelector("#done").textContent = text;
}
