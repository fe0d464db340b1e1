/** What a single letter does in a cell. */
export type LetterEffect =
  /** This stands in the cell from now on. */
  | { readonly kind: "write"; readonly text: string }
  /** The unusual value of the cell is right. */
  | { readonly kind: "keep" }
  /** Opens the rest of the fundamentals. */
  | { readonly kind: "rest" }
  /** The letter is spent: it goes on with a word that a key has written. */
  | { readonly kind: "spent" };

/** As it is typed in full, too. */
export const NOT_MEASURABLE = "n/m";

const MINUS = /^[-\u2010-\u2015\u2212\ufe58\ufe63\uff0d]/;

/** The same number with its other sign; the text as typed, but for the sign. */
function turned(text: string): string {
  const plain = text.trim();
  if (MINUS.test(plain)) return plain.slice(1).trim();
  return `-${plain.replace(/^\+\s*/, "")}`;
}

/**
 * What a single letter does in a focused cell: n can't be measured, x not read (empty), s the other sign, k the unusual
 * value is right, r the rest. A letter acts only where no word is being typed, so that units can be written.
 *
 * @param text what stands in the cell
 * @returns null: the key is typed
 */
export function letterKey(key: string, text: string, stands: "typed" | "selected"): LetterEffect | null {
  if (key.length !== 1) return null;
  const written = text.trim() === NOT_MEASURABLE;
  if (!written && stands === "typed" && /\p{L}/u.test(text)) return null;
  switch (key.toLowerCase()) {
    case "n":
      return { kind: "write", text: NOT_MEASURABLE };
    case "x":
      return { kind: "write", text: "" };
    case "s":
      return /\d/.test(text) ? { kind: "write", text: turned(text) } : { kind: "spent" };
    case "k":
      return { kind: "keep" };
    case "r":
      return { kind: "rest" };
    default:
      return written && /[\p{L}/.\s]/u.test(key) ? { kind: "spent" } : null;
  }
}
