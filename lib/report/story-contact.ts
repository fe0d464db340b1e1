import { dayNumber } from "@/lib/domain/calendar-day";
import { contactCounts } from "@/lib/verdict/contact-counts";
import { type ContactChange, type ContactShare, decideContact } from "@/lib/verdict/contact-share";
import { FAMILY_THRESHOLDS } from "@/lib/verdict/family-thresholds";
import type { Words } from "@/lib/words/catalogue";
import { sayStoryPart } from "@/lib/words/say-family-story";
import type { StorySource } from "./family-story-source";
import type { StoryFinding } from "./story-findings";
import type { StoryTelling } from "./story-sentences";

function shareOf({ contact, today }: StorySource): ContactShare | null {
  if (contact === null) return null;
  const { sessions, clubGroup, seasonStart } = contact;
  const decided = decideContact(contactCounts(sessions, clubGroup, { from: seasonStart, to: today }).counted);
  return decided.kind === "ok" ? decided.value : null;
}

/** What got better at about the time of a change of contact; without one, the latest thing that did. Null: nothing that may be told. */
function withWork(told: readonly StoryFinding[], change: ContactChange | null): StoryFinding | null {
  const apart = 7 * FAMILY_THRESHOLDS.contactWeeks.value;
  const gains = told.filter(({ kind }) => kind === "better");
  if (change === null) return gains.at(0) ?? null;
  const near = gains.find(({ track }) => {
    const gain = track.verdict.change;
    return (
      gain !== null &&
      dayNumber(gain.from) - apart <= dayNumber(change.to) &&
      dayNumber(change.from) <= dayNumber(gain.to) + apart
    );
  });
  return near ?? null;
}

/**
 * One line on contact (SEASON.md 24): solid of those that were counted, or that they are too few to tell, and whether it moved
 * with the work. A change of contact stands on no roster's list, so it only looks like one; and no score is promised.
 *
 * @returns empty: nothing was counted; to the youngest, unless it looks like more
 */
export function sayStoryContact(words: Words, told: readonly StoryFinding[], { source, reader }: StoryTelling): string {
  const share = shareOf(source);
  if (share === null) return "";
  const { change, latest, all } = share;
  if (reader === "young") return change?.direction === "up" ? words.say("family-story.contact.up.young") : "";
  if (all.balls < FAMILY_THRESHOLDS.contactBalls.value)
    return words.say("family-story.contact.few", { solid: all.solid, balls: all.balls });
  const work = withWork(told, change);
  const of =
    work === null
      ? ""
      : sayStoryPart(words, {
          fundamental: work.track.history.fundamental,
          hand: source.student.hand,
          whose: "your",
        });
  const key = `family-story.contact.${change?.direction ?? "same"}${work === null ? "" : ".with"}`;
  return [
    words.say("family-story.contact.share", { solid: latest.solid, balls: latest.balls }),
    words.say(key, { of }),
  ].join(" ");
}
