import { smallNumber } from "./contact-phrases";

/** How many strikes a phrase says, and of how many where it says so. */
export interface SaidNumber {
  readonly count: number;
  readonly of: number | null;
}

/** A number that says no count: two that it lies between. */
const BETWEEN = /^\d+[-–—]\d+$/;

/** Words that make `a` no number: a bit, a little, a touch. */
const NO_ONE = /^(?:bit|little|few|touch|shade|tad|hair|lot)$/;

/** What may follow a number that counts the strike before it. */
const AFTER_COUNT = /^(?:times?|over|with|from|off|into|in|on|at|today|again|left|right|early|late)$/;

/**
 * The number that belongs to a strike: the nearest before it, else one right after it.
 *
 * Before: `3`, `2/5`, `2 of 5`, `a couple of`, `both`, `all` or `all but one` of known balls, `a`. After: `x3`, `3 times`,
 * `twice`, `2/5`. The number of a club or of one ball is none, nor are two numbers that it lies between.
 *
 * @param ahead words before the strike, back to the strike before it
 * @param behind words after it, up to the next strike
 * @param balls how many were hit, where it is known
 * @returns null: no number is said
 */
export function contactNumber(
  ahead: readonly string[],
  behind: readonly string[],
  balls: number | null,
): SaidNumber | null {
  for (let at = ahead.length - 1; at >= 0; at--) {
    const word = ahead[at] as string;
    if (BETWEEN.test(word)) return null;
    const said = wholeNumber(word) ?? partOfBalls(word, balls);
    if (said !== null) return said;
    if (/^(?:all|every|each)$/.test(word)) continue;
    const number = smallNumber(word);
    if (number !== null && !namesThing(ahead, at)) return numberAt(ahead, at, number, balls);
    if (/^an?$/.test(word) && at >= ahead.length - 2 && !NO_ONE.test(ahead[at + 1] ?? ""))
      return { count: 1, of: null };
  }
  return numberBehind(behind);
}

/** `2/5`, `x3`, `3x`, a couple. */
function wholeNumber(word: string): SaidNumber | null {
  const fraction = /^(\d+)\/(\d+)$/.exec(word);
  if (fraction) return { count: Number(fraction[1]), of: Number(fraction[2]) };
  const times = /^x(\d+)$|^(\d+)x$/.exec(word);
  if (times) return { count: Number(times[1] ?? times[2]), of: null };
  return word === "couple" || word === "pair" ? { count: 2, of: null } : null;
}

/** Both, and all of known balls. */
function partOfBalls(word: string, balls: number | null): SaidNumber | null {
  if (word === "both") return { count: 2, of: balls === 2 ? 2 : null };
  return /^(?:all|every|each)$/.test(word) && balls !== null ? { count: balls, of: balls } : null;
}

/** Whether a number names a club (`5 iron`) or one ball (`ball 3`) and counts nothing. */
function namesThing(words: readonly string[], at: number): boolean {
  if (!/^\d/.test(words[at] as string)) return false;
  return /^(?:iron|wood|hybrid)$/.test(words[at + 1] ?? "") || /^(?:ball|shot|swing|number)$/.test(words[at - 1] ?? "");
}

/** A number at a place: the second of `2 of 5` is what the first is of; one after `all but` is what is missing. */
function numberAt(ahead: readonly string[], at: number, number: number, balls: number | null): SaidNumber | null {
  if (ahead[at - 1] === "but" && ahead[at - 2] === "all")
    return balls === null || balls < number ? null : { count: balls - number, of: balls };
  if (/^(?:or|to)$/.test(ahead[at - 1] ?? "") && smallNumber(ahead[at - 2] ?? "") !== null) return null;
  const joins = ahead[at - 1] === "of" || (ahead[at - 1] === "the" && ahead[at - 2] === "of");
  const skip = ahead[at - 1] === "of" ? 2 : 3;
  const shift = ahead[at - skip] === "out" ? skip + 1 : skip;
  const first = joins ? smallNumber(ahead[at - shift] ?? "") : null;
  return first === null ? { count: number, of: null } : { count: first, of: number };
}

function numberBehind(behind: readonly string[]): SaidNumber | null {
  const [word, next] = behind;
  if (word === undefined) return null;
  const whole = wholeNumber(word);
  if (whole !== null && /\d/.test(word)) return whole;
  if (word === "twice") return { count: 2, of: null };
  if (word === "once") return { count: 1, of: null };
  const number = smallNumber(word);
  const all = next === "of" ? smallNumber(behind[2] ?? "") : null;
  if (number !== null && all !== null) return { count: number, of: all };
  return number !== null && (next === undefined || AFTER_COUNT.test(next)) ? { count: number, of: null } : null;
}
