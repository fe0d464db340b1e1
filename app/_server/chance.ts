import { randomInt } from "node:crypto";

const CHANCES = 2 ** 47;

/** A number from 0 to below 1 that nobody can foresee. */
export function chance(): number {
  return randomInt(CHANCES) / CHANCES;
}
