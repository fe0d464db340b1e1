/** Short words kept in one column, separated by commas. */
export function splitWords(joined: string): string[] {
  return joined === "" ? [] : joined.split(",");
}

/** @throws RangeError for a word that holds the separator or nothing: it would come back as others */
export function joinWords(words: readonly string[]): string {
  for (const word of words) {
    if (word === "" || word.includes(",")) throw new RangeError(`not a short word: ${JSON.stringify(word)}`);
  }
  return words.join(",");
}
