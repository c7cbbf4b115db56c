// A number as a keeper types it.

/** The number of a text, whose comma serves as a point; NaN where nothing or no number was typed. */
export function numberOf(text) {
  const typed = text.trim();
  return typed ? Number(typed.replace(",", ".")) : Number.NaN;
}
