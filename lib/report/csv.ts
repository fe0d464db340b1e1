/** What a spreadsheet takes for the start of a formula, also behind apostrophes: one is added, and one is taken off again. */
const FORMULA = /^'*[=+\-@\t\r\n\0＝＋－＠]/u;
const NUMBER = /^[+-]?\d+([.,]\d+)?$/;

/**
 * Text that a spreadsheet would take for a formula, with an apostrophe first; a number stays one. The import takes the
 * apostrophe off again, and so gives back every text as it was.
 */
export function guardCell(text: string): string {
  return FORMULA.test(text) && !NUMBER.test(text) ? `'${text}` : text;
}

/** A cell as RFC 4180 has it, guarded against formulas. */
function cell(value: string | number | null): string {
  if (value === null) return "";
  if (typeof value === "number") return String(value);
  const safe = guardCell(value);
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** A table as CSV with a head line and CRLF ends. */
export function buildCsv(head: readonly string[], rows: readonly (readonly (string | number | null)[])[]): string {
  return [head, ...rows].map((row) => `${row.map(cell).join(",")}\r\n`).join("");
}
