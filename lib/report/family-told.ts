import type { FamilyTold } from "./family-model";
import type { FamilyStory } from "./family-story-model";

/** The story's sentences under their marks: what changed, each under its own, what can't be told yet, how the ball was hit. */
export function familyTold({ changed, changedMarks, unsure, contact }: FamilyStory): readonly FamilyTold[] {
  return [
    ...changed.map((line, at): FamilyTold => ({ glyph: changedMarks[at] ?? null, line })),
    ...(unsure === "" ? [] : [{ glyph: "open", line: unsure } as const]),
    ...(contact === "" ? [] : [{ glyph: null, line: contact }]),
  ];
}
