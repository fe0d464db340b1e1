import { CONTACT_KINDS, CONTACT_WORDS, type ContactKind } from "@/lib/domain/contact-word";
import {
  isHistory,
  LIST_WORDS,
  NEGATION_REACH,
  NEGATIONS,
  SHOT_WORDS,
  smallNumber,
  withoutTraps,
} from "./contact-phrases";

/** What one phrase of a note says of strikes of one kind. */
export interface CodedContact {
  readonly kind: ContactKind;
  /** How many; null: mentioned without a number. */
  readonly count: number | null;
  /** Of how many, where the phrase says so; null: it doesn't, and none is made up. */
  readonly of: number | null;
  /** Where the word stands in the note: from, to (not included). */
  readonly at: readonly [number, number];
}

/** A note about strikes, coded. */
export interface CodedNote {
  readonly contacts: readonly CodedContact[];
  /** Whether the counts are more than the balls that were hit: to be asked. */
  readonly tooMany: "yes" | "no";
}

/** One word of a clause, and where it stands in the note. */
interface Word {
  readonly text: string;
  readonly from: number;
  readonly to: number;
}

interface Named {
  readonly kind: ContactKind;
  readonly first: number;
  readonly last: number;
  readonly standing: "plain" | "loose";
}

const PHRASES = CONTACT_KINDS.flatMap((kind) =>
  (["plain", "loose"] as const).flatMap((standing) =>
    CONTACT_WORDS[kind][standing].map((phrase) => ({ kind, standing, words: phrase.split(" ") })),
  ),
).sort((a, b) => b.words.length - a.words.length);

/**
 * What a free note says of strikes: counts where a number is said, else mentions; never a number that isn't there.
 *
 * What is said of another time, of body or club, is passed over; a word that is negated counts 0. Words that can mean other
 * things name a strike only beside a word for ball or shot, or in a bare list.
 *
 * @param note as typed
 * @param balls how many were hit, where it is known
 */
export function codeContactNote(note: string, balls: number | null): CodedNote {
  const text = note.toLowerCase().replace(/[’‘`]/g, "'");
  const contacts = clauses(text).flatMap((clause) => codeClause(clause, text, balls));
  const total = contacts.reduce((sum, { count }) => sum + (count ?? 0), 0);
  return { contacts, tooMany: balls !== null && total > balls ? "yes" : "no" };
}

/** Stretches of a note between commas, points and joining words; `2/5` stays whole. */
function clauses(text: string): readonly (readonly [number, number])[] {
  const parts: (readonly [number, number])[] = [];
  const border = /[,;.!?\n()–—]|:(?!\s*(?:x ?)?\d)(?!\s*none)|(?<!\d)\/|\/(?!\d)|\band\b|\bbut\b|\bthen\b|\bplus\b/g;
  let from = 0;
  for (const found of text.matchAll(border)) {
    parts.push([from, found.index]);
    from = found.index + found[0].length;
  }
  return [...parts, [from, text.length]];
}

function codeClause([from, to]: readonly [number, number], text: string, balls: number | null): CodedContact[] {
  const clause = text.slice(from, to);
  if (isHistory(clause)) return [];
  const words = wordsOf(withoutTraps(clause), from);
  const named = namedIn(words);
  const bare = isBare(words, named);
  const counted = named.filter(({ standing }) => standing === "plain" || bare || hasShotWord(words));
  return counted.map((found) => codeNamed(words, found, counted, balls));
}

function wordsOf(clause: string, offset: number): readonly Word[] {
  return [...clause.matchAll(/\d+\/\d+|x ?\d+\b|\d+ ?x\b|[a-z]+(?:[-'][a-z]+)*|\d+/g)].map((found) => ({
    text: found[0].replace(" ", ""),
    from: offset + found.index,
    to: offset + found.index + found[0].length,
  }));
}

/** Strikes named in a clause; a longer name goes before one that it holds. */
function namedIn(words: readonly Word[]): readonly Named[] {
  const named: Named[] = [];
  let at = 0;
  while (at < words.length) {
    const found = PHRASES.find((phrase) => phrase.words.every((word, k) => words[at + k]?.text === word));
    if (found) named.push({ kind: found.kind, standing: found.standing, first: at, last: at + found.words.length - 1 });
    at += found?.words.length ?? 1;
  }
  return named;
}

function hasShotWord(words: readonly Word[]): boolean {
  return words.some((word) => SHOT_WORDS.test(word.text));
}

/** Whether a clause holds nothing but strikes, numbers and small words. */
function isBare(words: readonly Word[], named: readonly Named[]): boolean {
  return words.every(
    ({ text }, at) =>
      named.some(({ first, last }) => first <= at && at <= last) ||
      /^\d|^x\d/.test(text) ||
      LIST_WORDS.test(text) ||
      SHOT_WORDS.test(text),
  );
}

function codeNamed(words: readonly Word[], found: Named, all: readonly Named[], balls: number | null): CodedContact {
  const { kind, first, last } = found;
  const at = [(words[first] as Word).from, (words[last] as Word).to] as const;
  const before = all.filter((each) => each.last < first).at(-1)?.last ?? -1;
  const after = all.find((each) => each.first > last)?.first ?? words.length;
  const ahead = words.slice(before + 1, first).map((word) => word.text);
  const behind = words.slice(last + 1, after).map((word) => word.text);
  const near = words.slice(Math.max(0, first - NEGATION_REACH), first).map((word) => word.text);
  if (near.some((word) => NEGATIONS.test(word)) || behind[0] === "none") return { kind, count: 0, of: null, at };
  const said = numberIn(ahead, balls) ?? numberBehind(behind);
  return { kind, count: said?.count ?? null, of: said?.of ?? null, at };
}

interface Said {
  readonly count: number;
  readonly of: number | null;
}

/** A number before the word, the nearest one: `3`, `2/5`, `2 of 5`, `a couple of`, `both`, `all` of known balls, `a`. */
function numberIn(ahead: readonly string[], balls: number | null): Said | null {
  for (let i = ahead.length - 1; i >= 0; i--) {
    const word = ahead[i] as string;
    const fraction = /^(\d+)\/(\d+)$/.exec(word);
    if (fraction) return { count: Number(fraction[1]), of: Number(fraction[2]) };
    const times = /^x(\d+)$|^(\d+)x$/.exec(word);
    if (times) return { count: Number(times[1] ?? times[2]), of: null };
    if (word === "couple" || word === "pair") return { count: 2, of: null };
    if (word === "both") return { count: 2, of: balls === 2 ? 2 : null };
    if (word === "all" && balls !== null) return { count: balls, of: balls };
    const number = smallNumber(word);
    if (number !== null) return numberAt(ahead, i, number);
    if ((word === "a" || word === "an") && i >= ahead.length - 2 && !/^(?:bit|little|few)$/.test(ahead[i + 1] ?? ""))
      return { count: 1, of: null };
  }
  return null;
}

/** A number at a place: the second of `2 of 5` is what the first is of. */
function numberAt(ahead: readonly string[], at: number, number: number): Said {
  const joins = ahead[at - 1] === "of" || (ahead[at - 1] === "the" && ahead[at - 2] === "of");
  const skip = ahead[at - 1] === "of" ? 2 : 3;
  const shift = ahead[at - skip] === "out" ? skip + 1 : skip;
  const first = joins ? smallNumber(ahead[at - shift] ?? "") : null;
  return first === null ? { count: number, of: null } : { count: first, of: number };
}

/** What may follow a number that counts the strike before it. */
const AFTER_COUNT = /^(?:times?|over|with|from|off|into|in|on|at|today|again|left|right|early|late)$/;

/** A number after the word: `x3`, `3x`, `3 times`, `twice`, `thin 3`. */
function numberBehind(behind: readonly string[]): Said | null {
  const [word, next] = behind;
  if (word === undefined) return null;
  const times = /^x(\d+)$|^(\d+)x$/.exec(word);
  if (times) return { count: Number(times[1] ?? times[2]), of: null };
  if (word === "twice") return { count: 2, of: null };
  if (word === "once") return { count: 1, of: null };
  const fraction = /^(\d+)\/(\d+)$/.exec(word);
  if (fraction) return { count: Number(fraction[1]), of: Number(fraction[2]) };
  const number = smallNumber(word);
  const whole = next === "of" ? smallNumber(behind[2] ?? "") : null;
  if (number !== null && whole !== null) return { count: number, of: whole };
  return number !== null && (next === undefined || AFTER_COUNT.test(next)) ? { count: number, of: null } : null;
}
