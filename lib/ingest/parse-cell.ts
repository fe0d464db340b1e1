import { type ParsedValue, parseValue } from "./parse-value";

/** Every dash that a keyboard or a word processor puts before a figure. */
const DASH = /^(\s*)[\u2010-\u2015\u2212\ufe58\ufe63\uff0d](?=\s*[\d.,])/;

/**
 * A value typed by hand into a cell. Beyond what a file is read by: full-width figures and any dash before a figure are
 * taken as meant, since whoever typed them sees the cell.
 */
export function parseCell(typed: string): ParsedValue {
  const plain = /[\uff01-\uff5e]/.test(typed) ? typed.normalize("NFKC") : typed;
  return parseValue(plain.replace(DASH, "$1-"));
}
