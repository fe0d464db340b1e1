const DASHES = /^[-\u2010-\u2015\u2212\ufe58\ufe63\uff0d]\s*(?=[\d.,])/;
const PLAIN = /^([+-]?)(\d{1,6}(?:[.,]\d+)?|[.,]\d+)\s*(?:°|deg|%)?$/;
/** `1,234` could be more than a thousand. */
const EITHER = /^[+-]?[1-9]\d{0,2},\d{3}\s*(?:°|deg|%)?$/;

/**
 * The number that stands plainly in a cell, for the question of sign or digit; null: none, or none that is sure. The
 * server reads the cell by rules of its own and decides.
 */
export function typedNumber(text: string): number | null {
  const plain = text.normalize("NFKC").trim().replace(DASHES, "-");
  if (EITHER.test(plain)) return null;
  const match = PLAIN.exec(plain);
  if (!match) return null;
  const size = Number((match[2] ?? "").replace(",", "."));
  return size === 0 ? 0 : match[1] === "-" ? -size : size;
}
