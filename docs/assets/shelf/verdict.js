// A verdict's sign: its own shape and its word, so that colour is never all that tells them apart.

import { element } from "../paint.js";
import { upper } from "./words.js";

const WORDS = { calm: "Calm", watch: "Watch", act: "Act now", unknown: "Not known" };

export function sign(verdict) {
  const known = Object.hasOwn(WORDS, verdict) ? verdict : "unknown";
  return element("b", { className: `stands-sign is-${known}`, textContent: WORDS[known] });
}

/** Python's sentence without the verdict's word in front, which the sign says already. */
export function besideSign(sentence, verdict) {
  const word = `${WORDS[verdict] ?? ""}:`;
  const rest = sentence.toLowerCase().startsWith(word.toLowerCase()) ? sentence.slice(word.length).trim() : sentence;
  return upper(rest);
}
