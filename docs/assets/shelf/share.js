// Hands a file or a link to the phone's share sheet where there is one; else a file is saved, a link copied.

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

/**
 * Share a link, or put it on the clipboard where there is no share sheet.
 * @returns {Promise<"shared" | "copied" | "cancelled" | "refused">}
 */
export async function shareLink(title, url) {
  try {
    if (navigator.share) {
      await navigator.share({ title, url });
      return "shared";
    }
    await navigator.clipboard.writeText(url);
    return "copied";
  } catch (refusal) {
    return refusal.name === "AbortError" ? "cancelled" : "refused";
  }
}
