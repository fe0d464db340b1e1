import type { Hand } from "@/lib/domain/handedness";
import type { Words } from "@/lib/words/catalogue";
import { capital } from "@/lib/words/say-family";
import { sayStoryPart } from "@/lib/words/say-family-story";
import type { FamilyMilestones } from "./family-look-model";
import { familyMonths, type MonthsTo } from "./family-months";
import type { ShownTrack } from "./family-shown";
import { saidGlyph } from "./said";

/** For whom it is told. */
interface MilestonesTo extends MonthsTo {
  readonly hand: Hand;
}

interface Milestone {
  readonly day: string;
  readonly when: string;
  readonly text: string;
}

function milestonesOf(
  words: Words,
  { history, verdict, kind, awaySince }: ShownTrack,
  to: MilestonesTo,
): readonly Milestone[] {
  const of = capital(sayStoryPart(words, { fundamental: history.fundamental, hand: to.hand, whose: "your" }));
  const { change, ownedSince, watch } = verdict;
  const better: Milestone[] =
    change !== null && saidGlyph(verdict) === "gain"
      ? [
          {
            day: change.to,
            when: familyMonths(words, [change.from, change.to], "or", to),
            text: words.say(`family-page.milestone.better${awaySince === null ? "" : ".away"}`, { of }),
          },
        ]
      : [];
  // What may be leaving isn't told as reached, nor what is told as open, nor what nobody has seen for long.
  const stands = watch === null && awaySince === null && (kind === "good" || kind === "better");
  const owned: Milestone[] =
    ownedSince !== null && stands
      ? [
          {
            day: ownedSince,
            when: familyMonths(words, [ownedSince, ownedSince], "or", to),
            text: words.say("family-page.milestone.owned", { of }),
          },
        ]
      : [];
  return [...better, ...owned];
}

/** What was reached and is proved, in the order of days: better since and good since, never what is only likely; null: nothing yet. */
export function buildFamilyMilestones(
  words: Words,
  tracks: readonly ShownTrack[],
  to: MilestonesTo,
): FamilyMilestones | null {
  const items = tracks
    .flatMap((track) => milestonesOf(words, track, to))
    .sort((a, b) => a.day.localeCompare(b.day))
    .map(({ when, text }) => ({ when: capital(when), text }));
  return items.length === 0 ? null : { heading: words.say("family-page.milestones"), items };
}
