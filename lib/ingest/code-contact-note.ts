import { CONTACT_KINDS, CONTACT_WORDS, type ContactKind, DIRECTION_WORDS } from "@/lib/domain/contact-word";
import { contactNumber } from "./contact-number";
import {
  comparedPhrase,
  isHistory,
  LIST_WORDS,
  NEGATION_REACH,
  NEGATIONS,
  SHOT_WORDS,
  withoutTraps,
} from "./contact-phrases";
import { type NoteWord, noteClauses, noteWords } from "./note-clauses";

/** What one phrase of a note says of strikes of one kind. */
export interface CodedContact {
  readonly kind: ContactKind;
  /** How many; null: mentioned without a number; 0: said not to have been. */
  readonly count: number | null;
  /** Of how many, where the phrase says so; null: it doesn't, and none is made up. */
  readonly of: number | null;
  /** Where the word stands in the note: from, to (not included). */
  readonly at: readonly [number, number];
  /** The phrase in the form in which phrases are compared. */
  readonly phrase: string;
  /** The same with its numbers as said. */
  readonly said: string;
  /** Names this phrase within its note: the how-manieth that is said so, and how it is said. */
  readonly place: string;
}

/** Why a word that may name a strike was passed over. */
export const PASSED_OVER = ["history", "trap", "no-ball", "direction"] as const;

/** A word that names no strike here: of another time, of body or club, no word for a ball beside it, or a direction. */
export interface PassedWord {
  readonly why: (typeof PASSED_OVER)[number];
  readonly at: readonly [number, number];
  readonly phrase: string;
}

/** A note about strikes, coded. */
export interface CodedNote {
  readonly contacts: readonly CodedContact[];
  readonly passed: readonly PassedWord[];
  /** Whether the counts are more than the balls that were hit: to be asked. */
  readonly tooMany: "yes" | "no";
}

interface Named {
  readonly kind: ContactKind | "direction";
  readonly first: number;
  readonly last: number;
  readonly standing: "plain" | "loose";
}

const PHRASES = [
  ...CONTACT_KINDS.flatMap((kind) =>
    (["plain", "loose"] as const).flatMap((standing) =>
      CONTACT_WORDS[kind][standing].map((phrase) => ({ kind, standing, words: phrase.split(" ") })),
    ),
  ),
  ...DIRECTION_WORDS.map((word) => ({ kind: "direction", standing: "plain", words: [word] }) as const),
].sort((a, b) => b.words.length - a.words.length);

/**
 * What a free note says of strikes: counts where a number is said, else mentions; never a number that isn't there.
 *
 * What is said of another time, of body or club, is passed over; a word that is negated counts 0. Words that can mean other
 * things name a strike only beside a word for ball or shot, or in a bare list. Directions are no strikes.
 *
 * @param note as typed
 * @param balls how many were hit, where it is known
 */
export function codeContactNote(note: string, balls: number | null): CodedNote {
  const text = note.toLowerCase().replace(/[’‘`]/g, "'");
  const found = noteClauses(text).map((clause) => codeClause(clause, text, balls));
  const contacts = placed(found.flatMap((each) => each.contacts));
  return { contacts, passed: found.flatMap((each) => each.passed), tooMany: isTooMany(contacts, balls) };
}

type Unplaced = Omit<CodedContact, "place">;

/** The same phrase may be said twice in a note. */
function placed(contacts: readonly Unplaced[]): readonly CodedContact[] {
  const times = new Map<string, number>();
  return contacts.map((contact) => {
    const nth = (times.get(contact.said) ?? 0) + 1;
    times.set(contact.said, nth);
    return { ...contact, place: `${nth} ${contact.said}` };
  });
}

/** Whether counts are more than the balls that were hit. */
export function isTooMany(contacts: readonly Pick<CodedContact, "count">[], balls: number | null): "yes" | "no" {
  const total = contacts.reduce((sum, { count }) => sum + (count ?? 0), 0);
  return balls !== null && total > balls ? "yes" : "no";
}

function codeClause(
  [from, to]: readonly [number, number],
  text: string,
  balls: number | null,
): { readonly contacts: readonly Unplaced[]; readonly passed: readonly PassedWord[] } {
  const [whole, clause] = [text.slice(from, to), withoutTraps(text.slice(from, to))];
  const words = noteWords(clause, from);
  const named = namedIn(words);
  const strikes = named.filter((each) => each.kind !== "direction");
  const bare = isBare(words, named);
  const past = isHistory(clause);
  const isCounted = ({ standing }: Named): boolean => standing === "plain" || bare || hasShotWord(words);
  const counted = past ? [] : strikes.filter(isCounted);
  const why = (each: Named): PassedWord["why"] => {
    if (each.kind === "direction") return "direction";
    return past ? "history" : "no-ball";
  };
  const passed = named
    .filter((each) => !counted.includes(each))
    .map((each) => ({ why: why(each), at: placeOf(words, each), phrase: phraseOf(words, each, named) }));
  return {
    contacts: counted.map((each) => codeNamed(words, each, counted, balls)),
    passed: [...trapped(noteWords(whole, from), words), ...passed].sort((a, b) => a.at[0] - b.at[0]),
  };
}

/** Strikes that are named only inside a trap. */
function trapped(whole: readonly NoteWord[], kept: readonly NoteWord[]): readonly PassedWord[] {
  const left = new Set(kept.map((word) => word.from));
  const named = namedIn(whole);
  return named
    .filter(({ kind, first }) => kind !== "direction" && !left.has((whole[first] as NoteWord).from))
    .map((each) => ({ why: "trap", at: placeOf(whole, each), phrase: phraseOf(whole, each, named) }));
}

/** Strikes named in a clause; a longer name goes before one that it holds. */
function namedIn(words: readonly NoteWord[]): readonly Named[] {
  const named: Named[] = [];
  let at = 0;
  while (at < words.length) {
    const found = PHRASES.find((phrase) => phrase.words.every((word, k) => words[at + k]?.text === word));
    if (found) named.push({ kind: found.kind, standing: found.standing, first: at, last: at + found.words.length - 1 });
    at += found?.words.length ?? 1;
  }
  return named;
}

function hasShotWord(words: readonly NoteWord[]): boolean {
  return words.some((word) => SHOT_WORDS.test(word.text));
}

/** Whether a clause holds nothing but strikes, numbers and small words. */
function isBare(words: readonly NoteWord[], named: readonly Named[]): boolean {
  const strikes = named.filter((each) => each.kind !== "direction");
  return words.every(
    ({ text }, at) =>
      strikes.some(({ first, last }) => first <= at && at <= last) ||
      /^\d|^x\d/.test(text) ||
      LIST_WORDS.test(text) ||
      SHOT_WORDS.test(text),
  );
}

function placeOf(words: readonly NoteWord[], { first, last }: Named): readonly [number, number] {
  return [(words[first] as NoteWord).from, (words[last] as NoteWord).to];
}

/** The words that belong to a strike: from the one before it to the one after it. */
function stretchOf({ first, last }: Named, all: readonly Named[], length: number): readonly [number, number] {
  const before = all.filter((each) => each.last < first).at(-1)?.last ?? -1;
  return [before + 1, all.find((each) => each.first > last)?.first ?? length];
}

function phraseOf(
  words: readonly NoteWord[],
  found: Named,
  all: readonly Named[],
  numbers: "alike" | "as-said" = "alike",
): string {
  const [from, to] = stretchOf(found, all, words.length);
  const texts = words.map((word) => word.text);
  return comparedPhrase(
    texts.slice(from, found.first),
    texts.slice(found.first, found.last + 1),
    texts.slice(found.last + 1, to),
    numbers,
  );
}

function codeNamed(words: readonly NoteWord[], found: Named, all: readonly Named[], balls: number | null): Unplaced {
  const { first, last } = found;
  const [from, to] = stretchOf(found, all, words.length);
  const texts = words.map((word) => word.text);
  const base = {
    kind: found.kind as ContactKind,
    at: placeOf(words, found),
    phrase: phraseOf(words, found, all),
    said: phraseOf(words, found, all, "as-said"),
  };
  const behind = texts.slice(last + 1, to);
  // A number of its own begins anew: “no shanks 3 thin” has three thin ones.
  const own = texts.slice(from, first).some((word) => /^x?\d/.test(word));
  const near = texts.slice(Math.max(own ? from : 0, first - NEGATION_REACH), first);
  if (near.some((word) => NEGATIONS.test(word)) || behind[0] === "none") return { ...base, count: 0, of: null };
  const said = contactNumber(texts.slice(from, first), behind, balls);
  return { ...base, count: said?.count ?? null, of: said?.of ?? null };
}
