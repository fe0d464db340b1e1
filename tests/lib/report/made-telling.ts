import { buildFamilyStory } from "@/lib/report/family-story";
import type { Telling } from "@/lib/report/tell-source";
import { wordsFor } from "@/lib/words/catalogue";
import { fundamentalOf, SAID, storySource, storyTrack, TODAY } from "./story-cases";

/** Dot, whose feet got better as the list has it. */
export function madeTelling(over: Partial<Telling> = {}): Telling {
  const student = { id: "s1", alias: "Dot", hand: "right", birthYear: 2012 } as const;
  const better = SAID["better, listed"];
  if (better === undefined) throw new Error("no such case");
  const tracks = [storyTrack(fundamentalOf("foot-line"), better)];
  const source = storySource({ student, tracks, told: over.told ?? [] });
  return {
    ...{ student, today: TODAY, story: buildFamilyStory(wordsFor("en"), source), taskLines: ["Lay two sticks."] },
    ...{ stopped: "no", filming: "Put the phone one short step left.", picture: null, source, told: [] },
    ...over,
  };
}
