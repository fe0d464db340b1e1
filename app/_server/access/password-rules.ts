import { dictionary } from "@zxcvbn-ts/language-common";

/** Characters; NIST SP 800-63B-4 (2025), 3.1.1.2: at least 15 where a password may be the only proof. From memory. */
export const SHORTEST_PASSWORD = 15;
/** Characters; the same page asks for at least 64. A longer text costs the server more than it adds. */
export const LONGEST_PASSWORD = 256;
/** Different characters below which a long password is one thing typed over and over. */
const FEWEST_DIFFERENT = 5;

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
  if (new Set(password.toLowerCase()).size < FEWEST_DIFFERENT) return "monotone";
  if (isCommon(password)) return "common";
  const plain = password.toLowerCase();
  const own = about.map((each) => each.toLowerCase()).filter((each) => each.length >= 4);
  return own.some((each) => plain.replace(each, "").length < SHORTEST_PASSWORD / 2) ? "personal" : null;
}
