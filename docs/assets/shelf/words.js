// Words as they stand at the head of a line.

/** A text with a capital; pH stays as it is written. */
export function upper(text) {
  return text.startsWith("pH") ? text : text.slice(0, 1).toUpperCase() + text.slice(1);
}
