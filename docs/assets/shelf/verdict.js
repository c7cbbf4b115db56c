// A verdict's sign: its own shape and its word, so that colour is never all that tells them apart.

import { element } from "../paint.js";

const WORDS = { calm: "Calm", watch: "Watch", act: "Act", unknown: "Not known" };

export function sign(verdict) {
  const known = Object.hasOwn(WORDS, verdict) ? verdict : "unknown";
  return element("b", { className: `stands-sign is-${known}`, textContent: WORDS[known] });
}
