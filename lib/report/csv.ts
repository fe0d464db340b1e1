/** A cell as RFC 4180 has it. Text that a spreadsheet would take for a formula gets an apostrophe first; numbers stay numbers. */
function cell(value: string | number | null): string {
  if (value === null) return "";
  if (typeof value === "number") return String(value);
  const safe = /^[=+\-@\t\r＝＋－＠]/u.test(value) && !/^[+-]?\d+(\.\d+)?$/.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** A table as CSV with a head line and CRLF ends. */
export function buildCsv(head: readonly string[], rows: readonly (readonly (string | number | null)[])[]): string {
  return [head, ...rows].map((row) => `${row.map(cell).join(",")}\r\n`).join("");
}
