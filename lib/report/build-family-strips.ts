import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import type { Hand } from "@/lib/domain/handedness";
import { FAMILY_THRESHOLDS } from "@/lib/verdict/family-thresholds";
import type { Words } from "@/lib/words/catalogue";
import { capital } from "@/lib/words/say-family";
import { sayStoryPart } from "@/lib/words/say-family-story";
import { buildStrip } from "./build-strip";
import type { FamilyStrips } from "./family-look-model";
import type { ShownTrack } from "./family-shown";
import { buildTrackSummary } from "./track-summary";

/** The first day of the strips, which share their days: the first video of any of them. */
function firstDay(tracks: readonly ShownTrack[], today: string): string {
  const days = tracks.flatMap(({ history }) => history.sessions.slice(0, 1).map(({ session }) => session.day));
  return days.sort()[0] ?? dayFromNumber(dayNumber(today) - FAMILY_THRESHOLDS.logDays.value);
}

/** All else that is measured as strips with one plain word each; null: there is nothing else. */
export function buildFamilyStrips(
  words: Words,
  tracks: readonly ShownTrack[],
  { hand, reader, today }: { readonly hand: Hand; readonly reader: "young" | "other"; readonly today: string },
): FamilyStrips | null {
  if (tracks.length === 0) return null;
  const from = firstDay(tracks, today);
  return {
    heading: words.say(reader === "young" ? "family-page.strips.young" : "family-page.strips"),
    lead: words.say(reader === "young" ? "family-page.read.young" : "family-page.strips.lead"),
    rows: tracks.map(({ history, verdict, kind }) => {
      const of = capital(sayStoryPart(words, { fundamental: history.fundamental, hand, whose: "your" }));
      const word = words.say(`family-page.word.${kind}`);
      const summary = buildTrackSummary(history, verdict);
      return { of, word, strip: buildStrip(summary, from, today, words.say("family-page.strip", { of, word })) };
    }),
  };
}
