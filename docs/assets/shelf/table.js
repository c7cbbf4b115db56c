// Text tables with separated cells, as RFC 4180 has them; also those with semicolons or tabs.

/** A table's text. Words that a spreadsheet would take for a formula get an apostrophe in front. */
export function table(rows) {
  return `${rows.map((row) => row.map(cell).join(",")).join("\r\n")}\r\n`;
}

function cell(value) {
  if (typeof value === "number") return String(value);
  const text = String(value ?? "").replace(/^(?='*[=+\-@\t\r])/, "'");
  return /[",\r\n]|^\s|\s$/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** The rows of a table as lists of texts, without empty rows, and what separates the cells. */
export function separated(text) {
  const whole = text.replace(/^\uFEFF/, "");
  const head = whole.slice(0, whole.search(/[\r\n]|$/));
  const separator = [",", ";", "\t"].toSorted((one, other) => head.split(other).length - head.split(one).length)[0];
  const rows = [[]];
  // A quoted cell may hold anything, two quotes for one; what follows it up to the separator is part of it.
  const cells = new RegExp(`("(?:[^"]|"")*(?:"|$))?([^${separator}\r\n]*)(${separator}|\r\n|\n|\r|$)`, "y");
  while (cells.lastIndex < whole.length) {
    const [, quoted = "", plain, end] = cells.exec(whole);
    rows.at(-1).push(unguarded(quoted.replace(/^"|"$/g, "").replaceAll('""', '"') + plain));
    if (end !== separator) rows.push([]);
    else if (cells.lastIndex === whole.length) rows.at(-1).push("");
  }
  return { rows: rows.filter((row) => row.some((one) => one.trim())), separator };
}

function unguarded(text) {
  return text.replace(/^'(?='*[=+\-@\t\r])/, "");
}
