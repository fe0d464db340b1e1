/** One sentence of a note: from, to (not included). */
export type SentencePlace = readonly [number, number];

/**
 * The sentences of a note: they end at a point, a question or exclamation mark before a space, or with their line.
 *
 * @returns in order; sentences of nothing but spaces are left out
 */
export function noteSentences(note: string): readonly SentencePlace[] {
  const places: SentencePlace[] = [];
  let from = 0;
  for (const end of note.matchAll(/[.!?]+(?=\s|$)|\n+/g)) {
    places.push([from, end.index + end[0].length]);
    from = end.index + end[0].length;
  }
  places.push([from, note.length]);
  return places.filter(([start, end]) => note.slice(start, end).trim() !== "");
}
