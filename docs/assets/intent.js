// What a keeper means: phrases kept beside a page, met by words in any order, with endings and slips allowed.
// A phrase is a row of places; a place holds words that mean the same. One that begins with ! is for danger.

export const SMALL = new Set("a all am an and any are as at be been but by can could did do does for had has have how i if in is it its me my of on or our should so some that the their them there these they this to was we were what when where which why will with would you your".split(" "));
const BARELY = 0.01;
const UNKNOWN = 0.5; // how much a word counts that no phrase has
const BESIDE = 0.35; // and how much of its weight a word keeps that a phrase leaves out
const ENOUGH = 0.4; // how well a phrase must be met to count at all
export const NEARLY_ALL = 0.85; // met so well, or all its places where it is of danger, a phrase stands before any name

/** The phrases of all pages, ready to be met. ``sought`` of a page is a list of texts. */
export function phrasesOf(pages, plain, isOneSlip) {
  const phrases = pages.flatMap((page) => page.sought.map((text) => made(page, plain(text))));
  const seats = new Map(); // each word: where it stands, as [phrase, place]
  for (const phrase of phrases) for (const [place, words] of phrase.places.entries()) for (const word of words) sit(seats, word, [phrase, place]);
  for (const phrase of phrases) {
    phrase.weights = phrase.places.map((words) => Math.min(...words.map((word) => weight(seats, word))));
    phrase.all = sum(phrase.weights);
  }
  const living = new Set(phrases.flatMap(({ urgent, places }) => (urgent ? places[0] : []))); // a phrase of danger begins with who is in it
  return { seats, living, plain, isOneSlip };
}

function sit(seats, word, seat) {
  if (!seats.has(word)) seats.set(word, []);
  seats.get(word).push(seat);
}

function made(page, text) {
  const words = text.replace(/^!\s*/, "").split(/\s+/);
  return { page, urgent: text.startsWith("!"), places: words.map((one) => [...new Set(one.split("|").map(stem))]).filter((one) => !one.every((word) => SMALL.has(word))) };
}

/** How much a word tells: the more phrases have it, the less. */
function weight(seats, word) {
  const many = seats.get(word)?.length;
  return many ? 1 / (1 + Math.log(many)) : UNKNOWN;
}

/** How well each page's best phrase is met, as page and 0 to 1; pages that are hardly meant are left out. */
export function meant({ seats, living, plain, isOneSlip }, query) {
  const words = [...new Set(plain(query).split(/[^\p{L}\p{N}.]+/u).filter((word) => word && !SMALL.has(word)).map(stem))];
  const typed = words.map((word) => (seats.has(word) ? word : ([...seats.keys()].find((known) => isOneSlip(known, word)) ?? word)));
  const asked = sum(typed.map((word) => weight(seats, word)));
  const met = new Map(); // of each phrase: its places that are met, and how much the words weigh that met them
  for (const word of typed) {
    for (const [phrase, place] of seats.get(word) ?? []) {
      const places = met.get(phrase) ?? new Map();
      if (!places.has(place)) met.set(phrase, places.set(place, weight(seats, word)));
    }
  }
  const isAlarm = (phrase, places) => phrase.urgent && places.size === phrase.places.length;
  const inDanger = [...met].some(([phrase, places]) => isAlarm(phrase, places));
  const speaksOfAnimals = (phrase, places) => [...places.keys()].some((place) => phrase.places[place].some((word) => living.has(word)));
  const found = new Map();
  for (const [phrase, places] of met) {
    const typedHere = sum([...places.values()]);
    const placesHere = sum([...places.keys()].map((place) => phrase.weights[place]));
    const share = (typedHere + placesHere) / (phrase.all + typedHere + BESIDE * (asked - typedHere));
    // Where animals are in danger, a page comes first only by a phrase that speaks of animals.
    const most = inDanger && !speaksOfAnimals(phrase, places) ? NEARLY_ALL - BARELY : 1;
    const score = Math.min(most, isAlarm(phrase, places) ? Math.max(share, NEARLY_ALL) : share);
    if (places.size < Math.min(2, phrase.places.length)) continue; // one word of several may mean anything
    if (score >= ENOUGH && score > (found.get(phrase.page) ?? 0)) found.set(phrase.page, score);
  }
  return found;
}

/** A word without the endings that change nothing here. */
export function stem(word) {
  const short = word.replace(/(?<=..[^s])(ies|ing|ed|es|s)$/, (ending) => (ending === "ies" ? "y" : ""));
  return short.replace(/(?<=...)e$/, "").replace(/(?<=..)([bdgmnprt])\1$/, "$1");
}

function sum(numbers) {
  return numbers.reduce((total, one) => total + one, 0);
}
