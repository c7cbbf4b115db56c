// Sets plants side by side: fetches pieces that the build made, and puts them into place.

import { openIndex, search } from "./finder.js";
import { writeEntry } from "./history-entry.js";
import { element, thumb } from "./paint.js";
import { livesIn } from "./shelf/occupants.js";
import { called, shelf, tankHere } from "./shelf/shelf-start.js";
import { onSwitch } from "./shelf/switch.js";
import { painted } from "./trust.js";

const MOST = 4;
const OFFERED = 6;

let data;
const drawings = new Map();

export async function open(root) {
  const form = document.querySelector("#compare");
  data ??= await (await fetch(new URL("assets/compare.json", root))).json();
  const asked = new URLSearchParams(location.search).getAll("plants").flatMap((part) => part.split(","));
  const page = { root, form, tank: undefined, field: form.querySelector("input"), chosen: [...new Set(asked)].filter((slug) => Object.hasOwn(data.plants, slug)).slice(0, MOST) };
  page.field.onfocus = () => openIndex(root).catch(() => {}); // asked again, and told, by what is typed
  page.field.oninput = () => offer(page);
  form.onsubmit = (event) => {
    event.preventDefault();
    document.querySelector("#offers button")?.click();
  };
  document.querySelector("#share button").onclick = share;
  if (!asked.length) await fromTank(page);
  else await show(page);
  onSwitch(() => page.tank !== undefined && fromTank(page));
}

/** With no plants in the address: those of the tank that the keeper stands at. */
async function fromTank(page) {
  const tank = await tankHere().catch(() => null);
  const { plants } = tank ? await livesIn(await shelf(), tank) : { plants: [] };
  page.chosen = plants.map((one) => one.plant).filter((slug) => Object.hasOwn(data.plants, slug)).slice(0, MOST);
  page.tank = page.chosen.length ? called(tank) : null;
  await show(page);
}

async function change(page, chosen) {
  page.tank = undefined; // the keeper's own choice from here on
  page.chosen = chosen;
  page.field.value = "";
  await show(page);
}

async function show(page) {
  writeEntry(page.form, page.chosen.length ? `?plants=${page.chosen.join(",")}` : location.pathname);
  offer(page);
  document.querySelector("#share").hidden = page.chosen.length < 2;
  await Promise.all(page.chosen.map((slug) => drawing(page.root, slug)));
  if (!page.field.isConnected) return;
  document.querySelector("#beside").replaceChildren(...(page.chosen.length ? [table(page)] : []));
  sources();
}

/** What the typed letters find; with none typed, what the chosen plants are taken for. */
async function offer(page) {
  if (page.field.value.trim()) await openIndex(page.root);
  if (!page.field.isConnected) return; // a tapped link has put another page in this one's place
  const typed = page.field.value.trim(); // as it stands now
  const found = typed ? search(typed).map(({ address }) => address.match(/^plants\/([^/]+)\/$/)?.[1]) : page.chosen.flatMap((slug) => Object.keys(data.plants[slug].apart));
  const offered = (slug) => typed || !data.plants[slug].never; // what the book never plants comes by its own name alone
  const slugs = [...new Set(found)].filter((slug) => Object.hasOwn(data.plants, slug) && offered(slug) && !page.chosen.includes(slug)).slice(0, OFFERED);
  const full = page.chosen.length >= MOST;
  const add = (slug) => choice(`Add ${data.plants[slug].name}`, [thumb(page.root, slug), "+ ", element("i", { textContent: data.plants[slug].name }), never(slug)], () => change(page, [...page.chosen, slug]));
  document.querySelector("#offers").replaceChildren(...(full ? [] : slugs.map(add)));
  document.querySelector("#status").textContent = [page.tank ? `From ${page.tank}.` : "", words(typed, slugs, page.chosen.length, full)].filter(Boolean).join(" ");
}

/** The warning of a plant that the book never plants; nothing for any other. */
function never(slug) {
  const { never: words } = data.plants[slug];
  return words ? element("em", { className: "law-mark", textContent: ` ${words}` }) : "";
}

function words(typed, slugs, count, full) {
  if (full) return "Four are the most. Remove one to add another.";
  if (typed && !slugs.length) return "No plant found. Try fewer letters, or another name.";
  if (typed) return `${slugs.length} found.`;
  if (count && slugs.length) return "Above: what they are taken for.";
  return count ? "" : "Type a name; two to four plants can stand side by side.";
}

function choice(label, content, act) {
  const button = element("button", { type: "button", ariaLabel: label }, ...content);
  button.onclick = act;
  return element("li", {}, button);
}

function remover(page, slug) {
  const button = element("button", { type: "button", className: "remove", ariaLabel: `Remove ${data.plants[slug].name}`, textContent: "✕" });
  button.onclick = () => change(page, page.chosen.filter((other) => other !== slug));
  return button;
}

/** The drawing from the plant's own page, cut to the tank's width by the build's figure. */
async function drawing(root, slug) {
  if (drawings.has(slug)) return;
  const reply = await fetch(new URL(`plants/${slug}/`, root));
  const picture = new DOMParser().parseFromString(painted(await reply.text()), "text/html").querySelector("svg.drawing");
  if (picture) picture.setAttribute("viewBox", picture.dataset.view);
  drawings.set(slug, picture);
}

function table(page) {
  const { root, chosen } = page;
  const head = (slug) => element("th", { scope: "col" }, remover(page, slug), element("a", { href: new URL(`plants/${slug}/`, root).href }, element("i", { textContent: data.plants[slug].name })), " ", element("small", { textContent: data.plants[slug].trade.join(", ") }), never(slug));
  const pictures = element("tr", { className: "pictures-row" }, ...chosen.map((slug) => element("td", {}, ...[drawings.get(slug)].filter(Boolean).map((one) => document.importNode(one, true)))));
  const parts = [element("tbody", {}, pictures)];
  let group = "";
  data.rows.forEach(([heading, , label], at) => {
    if (heading !== group) parts.push(element("tbody", { className: "heading" }, element("tr", {}, spanning(chosen, element("span", { textContent: heading })))));
    group = heading;
    parts.push(row(chosen, label, chosen.map((slug) => data.plants[slug].cells[at]), differs(chosen.map((slug) => data.plants[slug].words[at]))));
  });
  if (chosen.length > 1) parts.push(row(chosen, "What its record says of the others", chosen.map((slug) => apart(slug, chosen)), false));
  const made = element("table", { className: "beside" }, element("thead", {}, element("tr", {}, ...chosen.map(head))), ...parts);
  return element("div", { className: `wide of-${chosen.length}`, tabIndex: 0, role: "region", ariaLabel: "Plants side by side" }, made);
}

function row(chosen, label, cells, apart) {
  const name = element("span", { textContent: label });
  if (apart) name.append(" ", element("b", { className: "differs", textContent: "differs" }));
  const made = cells.map((cell) => (typeof cell === "string" ? element("td", { innerHTML: painted(cell) }) : element("td", {}, ...cell))); // text escaped by the build
  return element("tbody", { className: apart ? "apart" : "" }, element("tr", {}, spanning(chosen, name)), element("tr", {}, ...made));
}

function spanning(chosen, content) {
  return element("th", { scope: "rowgroup", colSpan: chosen.length }, content);
}

/** Whether no word is common to all; the words were chosen by the build. */
function differs(lists) {
  const known = lists.filter((words) => words !== null);
  return known.length > 1 && !known[0].some((word) => known.every((words) => words.includes(word)));
}

function apart(slug, chosen) {
  const said = chosen.filter((other) => other in data.plants[slug].apart);
  if (!said.length) return [element("span", { className: "unknown", textContent: "nothing said" })];
  return said.flatMap((other) => [element("b", {}, element("i", { textContent: data.plants[other].name })), element("p", { innerHTML: painted(data.plants[slug].apart[other]) })]);
}

/** The sources of what is shown, under the numbers that the marks carry. */
function sources() {
  const used = [...new Set([...document.querySelectorAll('#beside a[href^="#source-"]')].map((link) => link.getAttribute("href").slice(8)))];
  const items = used.map((key) => [key, ...data.sources[key]]).sort((one, other) => one[1] - other[1]);
  const list = element("ol", {}, ...items.map(([key, number, html]) => element("li", { value: number, id: `source-${key}`, innerHTML: painted(html) })));
  document.querySelector("#sources-used").replaceChildren(...(items.length ? [element("h2", { id: "sources", textContent: "Sources" }), list] : []));
}

async function share() {
  const told = document.querySelector("#share [role=status]");
  try {
    await navigator.clipboard.writeText(location.href);
    told.textContent = "Copied.";
  } catch {
    told.textContent = location.href; // no permission: shown, to copy by hand
  }
}
