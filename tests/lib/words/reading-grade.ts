import { fleschKincaid } from "flesch-kincaid";
import { syllable } from "syllable";

/** Whole sentences of a text; a full stop within a number ends none. */
export function sentencesOf(text: string): readonly string[] {
  return text
    .split(/(?<=[.!?])\s+/)
    .map((sentence) => sentence.trim())
    .filter((sentence) => sentence !== "");
}

/** Words of a sentence as they are read out; a bare mark is none. */
function wordsOf(sentence: string): readonly string[] {
  return sentence.split(/[\s–]+/).filter((word) => /[\p{L}\p{N}]/u.test(word));
}

/** Syllables of a word. A numeral is one: it is taken in at a glance, and the formula says nothing of numerals. */
function syllablesOf(word: string): number {
  return Math.max(1, syllable(word.replace(/[\d’']/g, "")));
}

/**
 * The years of schooling that a sentence asks for, by Flesch and Kincaid: 0.39 words a sentence + 11.8 syllables a word − 15.59
 * (Kincaid, Fishburne, Rogers, Chissom: Derivation of new readability formulas for Navy enlisted personnel, Research Branch Report
 * 8-75, 1975), from the libraries `flesch-kincaid` and `syllable`.
 */
export function readingGrade(sentence: string): number {
  const words = wordsOf(sentence);
  return fleschKincaid({
    sentence: 1,
    word: words.length,
    syllable: words.reduce((sum, word) => sum + syllablesOf(word), 0),
  });
}
