import type { Fundamental } from "@/lib/domain/fundamental";
import type { Caveat, Comparison, Estimate } from "@/lib/drills/comparison";
import type { Words } from "./catalogue";
import { decimalsFor, halfWidth, saySigned, withUnit } from "./number-words";

/** The cautions of a comparison, a sentence each, in their order. */
export function sayCaveats(words: Words, caveats: readonly Caveat[]): readonly string[] {
  return caveats.map(({ code, count }) => words.say(`compare.caveat.${code}`, { count }));
}

/** Why there is nothing to compare with; null: there is. */
export function sayNoReference(words: Words, reference: Comparison["reference"]): string | null {
  return reference.kind === "none" ? words.say("compare.none", { have: reference.have, need: reference.need }) : null;
}

/** A difference with its sign and unit, and its 95 of 100: “+3.2 %” and “+1.5 to +4.9 %”. */
export function sayEffect(
  words: Words,
  { unit }: Pick<Fundamental, "unit">,
  effect: Estimate,
): { readonly size: string; readonly between: string } {
  const decimals = decimalsFor(halfWidth(effect));
  return {
    size: withUnit(words, saySigned(words, effect.estimate, decimals), unit),
    between: saySignedRange(words, { unit }, effect.low95, effect.high95, decimals),
  };
}

/** From one difference to another: “+1.5 to +4.9 %”. */
export function saySignedRange(
  words: Words,
  { unit }: Pick<Fundamental, "unit">,
  low: number,
  high: number,
  decimals: number,
): string {
  const ends = { low: saySigned(words, low, decimals), high: saySigned(words, high, decimals) };
  return withUnit(words, words.say("number.range", ends), unit);
}
