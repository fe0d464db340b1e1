import type { Unit } from "@/lib/domain/fundamental";
import type { Words } from "./catalogue";
import { sayNumber, saySigned, withUnit } from "./number-words";

/** An error of reading with its unit: a tenth, or a hundredth where a tenth would say nothing. */
export function sayReadingSd(words: Words, sd: number, unit: Unit): string {
  return withUnit(words, sayNumber(words, sd, sd < 0.1 ? 2 : 1), unit);
}

/** A typical error with its 95 of 100: “1.1°, 0.8 to 1.6°”. */
export function sayTypicalError(
  words: Words,
  error: { readonly typical: number; readonly low: number; readonly high: number },
  unit: Unit,
): string {
  const one = (value: number): string => sayNumber(words, value, value < 0.1 ? 2 : 1);
  return words.say("reread.error", {
    error: withUnit(words, one(error.typical), unit),
    low: one(error.low),
    high: withUnit(words, one(error.high), unit),
  });
}

/** A signed difference with its 95 of 100: “+0.2 ± 0.5°”. */
export function sayDifference(
  words: Words,
  difference: { readonly value: number; readonly low: number; readonly high: number },
  unit: Unit,
): string {
  const half = (difference.high - difference.low) / 2;
  const number = words.say("number.plus-minus", {
    number: saySigned(words, difference.value, 1),
    half: sayNumber(words, half, 1),
  });
  return withUnit(words, number, unit);
}
