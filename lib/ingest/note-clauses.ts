/** One word of a note, and where it stands in it: from, to (not included). */
export interface NoteWord {
  readonly text: string;
  readonly from: number;
  readonly to: number;
}

const BORDER =
  /[,;.!?\n()]|(?<!\d)[–—]|[–—](?!\d)|:(?!\s*(?:x ?)?\d)(?!\s*none)|(?<!\d)\/|\/(?!\d)|\band\b|(?<!\ball )\bbut\b|\bthen\b|\bplus\b/g;

const WORD = /\d+\/\d+|\d+ ?[-–—] ?\d+|\d+(?:st|nd|rd|th)\b|x ?\d+\b|\d+ ?x\b|[a-z]+(?:[-'][a-z]+)*|\d+/g;

/**
 * Stretches of a note between commas, points and joining words; `2/5`, `2-3` and "all but one" stay whole.
 *
 * @param text in small letters
 * @returns from and to (not included) of each, in order; together they leave out only the borders
 */
export function noteClauses(text: string): readonly (readonly [number, number])[] {
  const parts: (readonly [number, number])[] = [];
  let from = 0;
  for (const found of text.matchAll(BORDER)) {
    parts.push([from, found.index]);
    from = found.index + found[0].length;
  }
  return [...parts, [from, text.length]];
}

/**
 * The words of a clause: numbers with what belongs to them, and words.
 *
 * @param offset where the clause begins in its note
 */
export function noteWords(clause: string, offset: number): readonly NoteWord[] {
  return [...clause.matchAll(WORD)].map((found) => ({
    text: found[0].replaceAll(" ", ""),
    from: offset + found.index,
    to: offset + found.index + found[0].length,
  }));
}
