// The search page: a field, and what it finds.

import { AMBIGUOUS, LONGEST, openIndex, search } from "./finder.js";
import { writeEntry } from "./history-entry.js";
import { badge, element, thumb } from "./paint.js";

const MOST = 20;
const NEAR = 5; // places in the list that count as a hit for an ambiguous name

export async function open(root) {
  const form = document.querySelector("#finder");
  const field = form.querySelector("input");
  field.value ||= (new URLSearchParams(location.search).get("q") ?? "").slice(0, LONGEST); // what is typed already stays
  await openIndex(root);
  if (!form.isConnected) return; // a tapped link has put another page in this one's place
  const show = () => paint(root, field.value.trim());
  field.oninput = show;
  form.onsubmit = (event) => {
    event.preventDefault();
    show();
  };
  if (!matchMedia("(pointer: coarse)").matches) field.focus();
  show();
}

function paint(root, query) {
  writeEntry(document.querySelector("#found"), query ? `?q=${encodeURIComponent(query)}` : location.pathname);
  const found = search(query);
  document.querySelector("#found").replaceChildren(...found.slice(0, MOST).map((one) => card(root, one)));
  lead(root, found.slice(0, NEAR).find(({ kind }) => kind === AMBIGUOUS));
  document.querySelector("#status").textContent = !query ? "" : found.length ? `${found.length} found.` : "Nothing found. Try fewer letters, or another name.";
}

/** Says above the list that a label with this name may mean several plants. */
function lead(root, name) {
  const place = document.querySelector("#lead");
  place.hidden = !name;
  if (name) place.replaceChildren("Labels like this mean more than one plant. ", element("a", { href: new URL(name.address, root).href, textContent: `${name.title}: which one is it?` }));
}

function card(root, { address, kind, title, names, line, urgency }) {
  const words = element("span", { className: "words" }, element("b", { textContent: title }));
  const under = element("span", { className: "under" }, ...(urgency.length ? [badge(...urgency), " "] : []), element("em", { textContent: kind }));
  if (names) under.append(" ", element("span", { textContent: names.split("; ").slice(0, 4).join(", ") }));
  words.append(under, line);
  const slug = /^plants\/([^/]+)\/$/.exec(address)?.[1];
  const pictured = slug && kind.startsWith("plant");
  const link = element("a", { href: new URL(address, root).href, className: "with-thumb" }, ...(pictured ? [thumb(root, slug)] : []), words);
  return element("li", {}, link);
}
