import type { Fundamental } from "@/lib/domain/fundamental";
import type { Hand } from "@/lib/domain/handedness";
import type { Words } from "./catalogue";

/**
 * What high up or low down in a family's picture means, or how to read it: “too far right”. Left and right are the
 * student's own hands; for an academy's own fundamental nobody has said which way is which.
 */
export function sayFamilySide(
  words: Words,
  { id, ownName }: Pick<Fundamental, "id" | "ownName">,
  hand: Hand,
  what: "high" | "low" | "read",
): string {
  const name = ownName === null ? id : "own";
  return words.say(`family-page.${what}.${name}`, {
    trail: words.say(`family.hand.${hand}`),
    lead: words.say(`family.hand.${hand === "right" ? "left" : "right"}`),
  });
}
