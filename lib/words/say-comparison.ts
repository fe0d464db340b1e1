import type { Caveat, Comparison } from "@/lib/drills/comparison";
import type { Words } from "./catalogue";

/** The cautions of a comparison, a sentence each, in their order. */
export function sayCaveats(words: Words, caveats: readonly Caveat[]): readonly string[] {
  return caveats.map(({ code, count }) => words.say(`compare.caveat.${code}`, { count }));
}

/** Why there is nothing to compare with; null: there is. */
export function sayNoReference(words: Words, reference: Comparison["reference"]): string | null {
  return reference.kind === "none" ? words.say("compare.none", { have: reference.have, need: reference.need }) : null;
}
