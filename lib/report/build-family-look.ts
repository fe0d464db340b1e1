import type { Words } from "@/lib/words/catalogue";
import { buildFamilyFilming } from "./build-family-filming";
import { buildFamilyMilestones } from "./build-family-milestones";
import { buildFamilyNumbers } from "./build-family-numbers";
import { buildFamilyPicture } from "./build-family-picture";
import { buildFamilyStrips } from "./build-family-strips";
import { familyReader } from "./family-findings";
import type { FamilyLook } from "./family-look-model";
import type { LookSource } from "./family-look-source";
import { familyShown } from "./family-shown";

/** What of a family's page is drawn, counted or shown how to do; for the youngest without numbers and without slips. */
export function buildFamilyLook(words: Words, source: LookSource): FamilyLook {
  const { student, today } = source;
  const { hand } = student;
  const reader = familyReader(student, today);
  const tracks = source.tracks.filter(({ history }) => history.sessions.length > 0);
  const shown = familyShown(tracks, { inHand: source.inHand, reader, today });
  const { pictured, strips } = shown;
  return {
    picture: pictured === null ? null : buildFamilyPicture(words, { ...pictured, hand, reader, today }),
    strips: buildFamilyStrips(words, strips, { hand, reader, today }),
    milestones: buildFamilyMilestones(words, [...(pictured === null ? [] : [pictured]), ...strips], {
      hand,
      reader,
      today,
    }),
    numbers: reader === "young" ? null : buildFamilyNumbers(words, shown, { hand, lines: source.numbers }),
    filming: buildFamilyFilming(words, source),
  };
}
