import { dictionary } from "@zxcvbn-ts/language-common";

/** Characters; NIST SP 800-63B-4 (2025), 3.1.1.2: at least 15 where a password may be the only proof. From memory. */
export const SHORTEST_PASSWORD = 15;
/** Characters; the same page asks for at least 64. A longer text costs the server more than it adds. */
export const LONGEST_PASSWORD = 256;
/** Different characters below which a long password is one thing typed over and over. */
const FEWEST_DIFFERENT = 5;

/** Different steps from one character to the next up to which a password is a row of keys or of figures, such as 1234567890123. */
const FEW_STEPS = 2;

export type PasswordIssue = "short" | "long" | "common" | "personal" | "monotone";

let common: ReadonlySet<string> | null = null;

function isCommon(password: string): boolean {
  common ??= new Set(dictionary["passwords-common"] as readonly string[]);
  const plain = password.toLowerCase();
  // "password123456!" is "password" to whoever guesses.
  return (
    common.has(plain) ||
    common.has(plain.replace(/[^\p{L}]+$/u, "")) ||
    common.has(plain.replace(/[^\p{L}\p{N}]/gu, ""))
  );
}

function isMonotone(plain: string): boolean {
  const codes = [...plain].map((character) => character.codePointAt(0) ?? 0);
  const steps = new Set(codes.slice(1).map((code, place) => code - (codes[place] ?? 0)));
  // "passwordpassword" is one word to whoever guesses.
  return new Set(codes).size < FEWEST_DIFFERENT || steps.size <= FEW_STEPS || /^(.+?)\1+$/su.test(plain);
}

/** Letters from which on a part of a name or an address is looked for in a password; shorter ones stand in many words. */
const SHORTEST_PART = 4;

/** What is left of a password without all that names its owner; untouched when nothing of it does. */
function withoutOwn(plain: string, about: readonly string[]): string {
  const whole = about.map((each) => each.toLowerCase());
  const parts = [...whole, ...whole.flatMap((each) => each.split(/[^\p{L}\p{N}]+/u))]
    .filter((part) => [...part].length >= SHORTEST_PART)
    .sort((a, b) => b.length - a.length);
  return parts.reduce((left, part) => left.replaceAll(part, ""), plain);
}

/**
 * Why a password won't do; null: it will. No kinds of characters are asked for: current guidance is length, and that it isn't
 * one which everybody tries.
 *
 * @param about name and address of whose it is, in whatever form
 */
export function checkPassword(password: string, about: readonly string[]): PasswordIssue | null {
  const { length } = [...password];
  if (length < SHORTEST_PASSWORD) return "short";
  if (length > LONGEST_PASSWORD) return "long";
  const plain = password.toLowerCase();
  if (isMonotone(plain)) return "monotone";
  if (isCommon(password)) return "common";
  return withoutOwn(plain, about).length < SHORTEST_PASSWORD / 2 ? "personal" : null;
}
