// Finds a page by any of its names, with a slip of the finger allowed; on the device, from a lean index.

import MiniSearch from "./minisearch.js";
import { element } from "./paint.js";

const MOST = 20;

let index;

export async function open(root) {
  const form = document.querySelector("#finder");
  const field = form.querySelector("input");
  field.value ||= new URLSearchParams(location.search).get("q") ?? ""; // what is typed already stays
  index ??= await load(root);
  const show = () => paint(root, field.value.trim());
  field.oninput = show;
  form.onsubmit = (event) => {
    event.preventDefault();
    show();
  };
  if (!matchMedia("(pointer: coarse)").matches) field.focus();
  show();
}

async function load(root) {
  const rows = await (await fetch(new URL("assets/search.json", root))).json();
  const made = new MiniSearch({
    fields: ["title", "names", "line"],
    storeFields: ["address", "kind", "title", "names", "line"],
    processTerm: (term) => term.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase() || null,
    searchOptions: {
      boost: { title: 4, names: 4 }, // a name before prose, a trade name as surely as the accepted one
      prefix: true,
      fuzzy: (term) => (term.length > 3 ? 0.25 : false),
    },
  });
  made.addAll(rows.map(([address, kind, title, names, line], id) => ({ id, address, kind, title, names: names.join("; "), line })));
  return made;
}

/** Every word must be found; each with a letter wrong, missing or too many, or with two neighbours swapped. */
function find(query, combineWith) {
  const words = query.split(/[\s,;.()]+/).filter(Boolean);
  const either = (word) => ({ combineWith: "OR", queries: [word, { queries: swaps(word), fuzzy: false, combineWith: "OR" }] });
  return index.search({ combineWith, queries: words.map(either) });
}

function swaps(word) {
  if (word.length < 4) return [];
  return Array.from({ length: word.length - 1 }, (_, at) => word.slice(0, at) + word[at + 1] + word[at] + word.slice(at + 2));
}

function paint(root, query) {
  history.replaceState(history.state, "", query ? `?q=${encodeURIComponent(query)}` : location.pathname);
  let found = query ? find(query, "AND") : [];
  if (!found.length) found = query ? find(query, "OR") : [];
  found.sort((one, other) => isNamed(other, query) - isNamed(one, query)); // the rest keeps its order
  document.querySelector("#found").replaceChildren(...found.slice(0, MOST).map((one) => card(root, one)));
  document.querySelector("#status").textContent = !query ? "" : found.length ? `${found.length} found.` : "Nothing found. Try fewer letters, or another name.";
}

/** Whether the query is one of a page's names, letter for letter. */
function isNamed({ title, names }, query) {
  return [title, ...names.split("; ")].some((name) => name.toLowerCase() === query.toLowerCase());
}

function card(root, { address, kind, title, names, line }) {
  const link = element("a", { href: new URL(address, root).href }, element("b", { textContent: title }), " ", element("em", { textContent: kind }));
  if (names) link.append(element("br"), element("span", { textContent: names.split("; ").slice(0, 4).join(", ") }));
  link.append(element("br"), line);
  return element("li", {}, link);
}
