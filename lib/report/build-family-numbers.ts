import type { Hand } from "@/lib/domain/handedness";
import { sessionSd } from "@/lib/verdict/session-sd";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayBand, sayLevel, sayLimit, sayShare, saySure } from "@/lib/words/number-words";
import { capital } from "@/lib/words/say-family";
import { sayStoryPart } from "@/lib/words/say-family-story";
import type { FamilyNumbers } from "./family-look-model";
import type { ShownTrack } from "./family-shown";
import { saidGlyph } from "./said";

/** 95 of 100 lie so many sds about. */
const HALF = 1.96;

/** How sure, of what stands on the roster's list alone: of the rest a family isn't told which way it may go. */
function sayHowSure(words: Words, { verdict, history }: ShownTrack): string {
  const glyph = saidGlyph(verdict);
  if (glyph === "open") return words.say("family-page.numbers.sure.open");
  if (glyph !== "steady") return saySure(words, verdict.evidence.noChange);
  return verdict.smallestWorthwhile === null
    ? words.say("family-page.word.same")
    : words.say("family-page.numbers.sure.steady", {
        limit: sayLimit(words, verdict.smallestWorthwhile, history.fundamental.unit),
      });
}

function factsOf(words: Words, track: ShownTrack): FamilyNumbers["items"][number]["facts"] {
  const { history, verdict, awaySince } = track;
  const { unit } = history.fundamental;
  const none = words.say("family-page.numbers.none");
  const day = awaySince === null ? "" : sayDay(words, awaySince, "day-year");
  const fact = (name: string, value: string) => ({ name: words.say(`family-page.numbers.${name}`, { day }), value });
  const hasBand = history.goal.low !== null || history.goal.high !== null;
  return [
    fact(
      awaySince === null ? "level" : "level.away",
      verdict.levelNow === null ? none : sayLevel(words, verdict.levelNow, unit),
    ),
    ...(hasBand ? [fact("band", sayBand(words, history.goal, unit))] : []),
    ...(hasBand ? [fact("share", verdict.bandShare === null ? none : sayShare(words, verdict.bandShare))] : []),
    fact("sure", sayHowSure(words, track)),
  ];
}

function videosOf(words: Words, { history, verdict }: ShownTrack, of: string): FamilyNumbers["videos"] {
  const { unit } = history.fundamental;
  return {
    heading: words.say("family-page.numbers.videos", { of }),
    lines: history.sessions.map((entry) => {
      const half = HALF * sessionSd(history, verdict, entry);
      const mean = entry.swings.reduce((sum, { value }) => sum + value, 0) / entry.swings.length;
      return words.say(entry.apart === null ? "family-page.numbers.video" : "family-page.numbers.video.empty", {
        day: sayDay(words, entry.session.day, "day-year"),
        mean: sayLevel(words, { estimate: mean, low95: mean - half, high95: mean + half }, unit),
      });
    }),
  };
}

/** The numbers for whoever wants them: where it is with its doubt, the band, the share inside, how sure, and the picture's videos. */
export function buildFamilyNumbers(
  words: Words,
  { pictured, strips }: { readonly pictured: ShownTrack | null; readonly strips: readonly ShownTrack[] },
  { hand, lines }: { readonly hand: Hand; readonly lines: readonly string[] },
): FamilyNumbers | null {
  const tracks = [...(pictured === null ? [] : [pictured]), ...strips];
  if (tracks.length === 0) return null;
  const name = ({ history }: ShownTrack): string =>
    capital(sayStoryPart(words, { fundamental: history.fundamental, hand, whose: "your" }));
  return {
    label: words.say("family-page.numbers"),
    lines,
    items: tracks.map((track) => ({ of: name(track), facts: factsOf(words, track) })),
    videos: pictured === null ? null : videosOf(words, pictured, name(pictured)),
  };
}
