// Finds pages by any of their names, with a slip of the finger allowed; on the device, from a lean index.

import { meant, NEARLY_ALL, phrasesOf, SMALL } from "./intent.js";
import MiniSearch from "minisearch";
import { sharing, wordsOf } from "./shared-words.js";

export const AMBIGUOUS = "name on labels";
const NEVER = ". Never "; // in the kind of what the book does not offer
export const LONGEST = 80; // letters of a query that are looked at: more would stop the page for minutes
const LONG_ENOUGH = 6; // letters; a slip in a shorter name makes another word
const NAMED = 4; // where a page of exactly that name stands
const NEARLY_NAMED = 2; // and one whose name is a slip away; both come before what is found by meaning
const AHEAD = 1.5; // by how much the page that tells many plants of one name apart goes before them
const MOST_ALIKE = 2; // plants of one name that may stand before the page which tells them apart
const HARDLY = 0.35; // pages that fit less by meaning are not worth showing, where names found none

const AT_ONCE = 40; // pages between two breaths: indexing them all would hold a phone for a second; each breath takes some ms

let opening;
let index;
let pages;
let phrases;
let words;

/** Resolves once it can be searched; read and indexed at the first call, beside whatever else the page does. */
export function openIndex(root) {
  opening ??= read(root);
  opening.catch(() => { opening = undefined; }); // so that another try reads it afresh
  return opening;
}

async function read(root) {
  const rows = await (await fetch(new URL("assets/search.json", root))).json();
  pages = rows.map(([address, kind, title, names, line, sought, typed, urgency], id) => ({ id, address, kind, title, names: names.join("; "), line, sought, typed, urgency, known: [title, ...names].map(plain) }));
  index = await made(pages);
  phrases = phrasesOf(pages, plain, isOneSlip);
  words = await wordsOf(pages, plain, AT_ONCE);
}

async function made(documents) {
  const fresh = new MiniSearch({
    fields: ["title", "names", "line"],
    processTerm: (term) => plain(term) || null,
    searchOptions: {
      boost: { title: 4, names: 4 }, // a name before prose, a trade name as surely as the accepted one
      boostDocument: (id) => (comesLater(documents[id].kind) ? 0.5 : 1),
      prefix: true,
    },
  });
  await fresh.addAllAsync(documents, { chunkSize: AT_ONCE });
  return fresh;
}

function plain(text) {
  return text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();
}

/** What fits the query, best first: pages that are meant, of that name, a slip away, then all that have its words. */
export function search(typed) {
  const query = typed.slice(0, LONGEST).trim();
  if (!query) return [];
  let found = find(query, "AND");
  if (!found.length) found = find(query, "OR", 0.2);
  const sought = meant(phrases, query);
  const shared = sharing(words, query);
  const names = byName(plain(query));
  const ranks = new Map(pages.map((page, at) => [page, Math.max(names[at], byMeaning(sought.get(page) ?? 0, shared.get(page.id) ?? 0))]));
  const named = pages.filter((page) => ranks.get(page) >= HARDLY);
  const all = [...new Set([...found.map(({ id }) => pages[id]), ...named])];
  return all.sort((one, other) => ranks.get(other) - ranks.get(one)); // the rest keeps its order
}

/** Every word must be found; each with a letter wrong, missing or too many, or with two neighbours swapped. */
function find(query, combineWith, fuzzy = 0.3) {
  const all = query.split(/[\s,;.()]+/).filter(Boolean);
  const telling = all.filter((word) => !SMALL.has(plain(word)));
  const words = combineWith === "OR" && telling.length ? telling : all; // where any word will do, small ones find anything
  const slip = (term) => (term.length > 2 ? fuzzy : false);
  const either = (word) => ({ combineWith: "OR", queries: [{ queries: [word], fuzzy: slip }, { queries: swaps(word), fuzzy: false, combineWith: "OR" }] });
  return index.search({ combineWith, queries: words.map(either) });
}

function swaps(word) {
  if (word.length < 4) return [];
  return Array.from({ length: word.length - 1 }, (_, at) => word.slice(0, at) + word[at + 1] + word[at] + word.slice(at + 2));
}

/** Whether a page comes after the others that a name leads to as well. */
function comesLater(kind) {
  return kind === AMBIGUOUS || kind.includes(NEVER);
}

/** How well a page fits by what is meant, below 2: but a phrase met nearly in full comes before any name. */
function byMeaning(phrase, share) {
  return phrase >= NEARLY_ALL ? NAMED + 1 + phrase + share : phrase + share;
}

/** How nearly the query is one of each page's names. The page of an ambiguous name comes after the plants of that name, but first where they are many. */
function byName(query) {
  const near = pages.map(({ known }) => (known.includes(query) ? NAMED : known.some((name) => isOneSlip(name, query)) ? NEARLY_NAMED : 0));
  const many = (step) => near.filter((one, at) => one === step && pages[at].kind !== AMBIGUOUS).length > MOST_ALIKE;
  return pages.map(({ kind }, at) => {
    if (kind === AMBIGUOUS) return near[at] && near[at] + (many(near[at]) ? AHEAD : 0);
    return near[at] && near[at] + (comesLater(kind) ? 0 : 1);
  });
}

/** Whether two names differ by one letter wrong, missing or too many, or by two neighbours swapped. */
function isOneSlip(one, other) {
  if (Math.min(one.length, other.length) < LONG_ENOUGH - 1 || Math.abs(one.length - other.length) > 1) return false;
  let start = 0;
  while (start < one.length && one[start] === other[start]) start += 1;
  let end = 0;
  while (end < Math.min(one.length, other.length) - start && one.at(-1 - end) === other.at(-1 - end)) end += 1;
  const [left, right] = [one.slice(start, one.length - end), other.slice(start, other.length - end)];
  return Math.max(left.length, right.length) <= 1 || (left.length === 2 && left === [...right].reverse().join(""));
}
