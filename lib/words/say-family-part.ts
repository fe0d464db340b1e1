import type { Fundamental } from "@/lib/domain/fundamental";
import type { Hand } from "@/lib/domain/handedness";
import type { Words } from "./catalogue";

/**
 * What a fundamental is about, as a family is told it: “where your feet point”. Left and right are the student's own hands.
 * It is the subject of a sentence, or stands behind “about”.
 */
export function sayFamilyPart(words: Words, { id, ownName }: Pick<Fundamental, "id" | "ownName">, hand: Hand): string {
  if (ownName !== null) return words.say("family.part.own", { name: ownName });
  const lead = hand === "right" ? "left" : "right";
  return words.say(`family.part.${id}`, {
    trail: words.say(`family.hand.${hand}`),
    lead: words.say(`family.hand.${lead}`),
  });
}
