// Hands a file to the phone's share sheet where there is one, else saves it.

import { save } from "../paint.js";

/**
 * @param {string} name
 * @param {string} type the file's media type
 * @param {string} text
 * @returns {Promise<"shared" | "saved" | "cancelled">}
 */
export async function shareOrSave(name, type, text) {
  const file = shareable(name, type, text);
  if (file) {
    try {
      await navigator.share({ files: [file], title: name });
      return "shared";
    } catch (refusal) {
      if (refusal.name === "AbortError") return "cancelled";
    }
  }
  save(name, type, text);
  return "saved";
}

/** The file as the share sheet takes it: browsers that refuse JSON take it as plain text. */
function shareable(name, type, text) {
  const wanted = [new File([text], name, { type }), new File([text], `${name}.txt`, { type: "text/plain" })];
  return typeof navigator.share === "function" && wanted.find((file) => navigator.canShare?.({ files: [file] }));
}
