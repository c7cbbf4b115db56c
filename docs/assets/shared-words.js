// Which pages share words with a query, wherever those words stand in it: for what nobody wrote a phrase for.

import { SMALL, stem } from "./intent.js";
import MiniSearch from "minisearch";

const SLIP = 0.2; // of a word's letters that may differ, in a long word
const LONG_ENOUGH = 6; // letters; a slip in a shorter word makes another

/** An index of all words of the pages: title, names, line, phrases, and what keepers typed; so many pages at once. */
export async function wordsOf(pages, plain, atOnce) {
  const term = (word) => (SMALL.has(plain(word)) ? null : stem(plain(word)));
  const words = new MiniSearch({
    fields: ["title", "names", "line", "phrases", "typed"],
    tokenize: (text) => text.split(/[^\p{L}\p{N}.]+/u),
    processTerm: term,
    searchOptions: { combineWith: "OR", fuzzy: (word) => (word.length >= LONG_ENOUGH ? SLIP : false) },
  });
  const written = pages.map((page) => ({ ...page, phrases: [...new Set(page.sought.join(" ").split(/[!|\s]+/))].join(" ") }));
  await words.addAllAsync(written, { chunkSize: atOnce });
  return words;
}

/** How well each page shares the query's words, by its id: 1 for the best of them. */
export function sharing(words, query) {
  const found = words.search(query);
  return new Map(found.map(({ id, score }) => [id, score / found[0].score]));
}
