/** Vowels that stand side by side and are one syllable; any other two are one each, as in “Video”. */
const VOWELS = /aa|ee|oo|ie|ei|ai|ey|au|eu|äu|[aeiouäöüy]/g;

/** Syllables of a German word by its vowels. A numeral is one, as in the English check. */
export function germanSyllables(word: string): number {
  const said = word.toLowerCase().replace(/qu/g, "q");
  return Math.max(1, said.match(VOWELS)?.length ?? 0);
}

/**
 * The years of schooling that a German sentence asks for, by the first Vienna formula for factual texts (Bamberger, Vanecek:
 * Lesen – Verstehen – Lernen – Schreiben, 1984; its numbers from memory): 0.1935 × words of three syllables and more, in %,
 * + 0.1672 × words a sentence + 0.1297 × words of more than six letters, in %, − 0.0327 × words of one syllable, in %, − 0.875.
 *
 * @param text one sentence or several; its words are counted over all of them, for the shares are made for a passage
 */
export function germanGrade(sentences: readonly string[]): number {
  const words = sentences.flatMap((sentence) => sentence.split(/[\s–]+/).filter((word) => /[\p{L}\p{N}]/u.test(word)));
  const share = (is: (word: string) => boolean): number => (100 * words.filter(is).length) / words.length;
  const letters = (word: string): number => word.replace(/[^\p{L}]/gu, "").length;
  return (
    0.1935 * share((word) => germanSyllables(word) >= 3) +
    0.1672 * (words.length / sentences.length) +
    0.1297 * share((word) => letters(word) > 6) -
    0.0327 * share((word) => germanSyllables(word) === 1) -
    0.875
  );
}
