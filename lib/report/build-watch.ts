import type { TrackVerdict } from "@/lib/domain/track-verdict";
import type { TrackHistory } from "@/lib/verdict/track-history";
import type { Words } from "@/lib/words/catalogue";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { type SaidWatch, sayWatch } from "@/lib/words/say-watch";
import { isAway } from "./away-days";
import type { RosterPage } from "./page-model";
import { trackHref } from "./roster-rows";
import type { RosterSource, WatchedTrack } from "./roster-source";
import { saidVerdict } from "./said";

/** The alarm that a page says, as of the track's last film; null: none, or a slip that is said already. */
export function buildWatch(
  words: Words,
  source: { readonly history: TrackHistory; readonly verdict: TrackVerdict; readonly today: string },
): SaidWatch | null {
  const { history, verdict, today } = source;
  if (verdict.watch === null || saidVerdict(verdict) === "slip") return null;
  const last = history.sessions.filter((entry) => entry.apart === null).at(-1)?.session.day;
  return sayWatch(words, verdict.watch, history.fundamental.unit, last && isAway(last, today) ? last : null);
}

function isCurrent({ summary }: WatchedTrack, today: string): boolean {
  const last = summary.sessions.findLast((session) => session.mark === "used")?.date;
  return saidVerdict(summary.verdict) !== "slip" && !isAway(last, today);
}

/**
 * The roster's list of owned fundamentals to look at again, the latest alarm first; null: none. What was filmed last six
 * weeks ago isn't among them: its student is away.
 */
export function buildWatchList(words: Words, source: RosterSource): RosterPage["watch"] {
  const items = source.watched
    .filter((track) => isCurrent(track, source.today))
    .flatMap(({ student, fundamental, summary }) => {
      const { watch } = summary.verdict;
      if (watch === null) return [];
      return [
        {
          raisedOn: watch.raisedOn,
          student: { href: `/students/${student.id}`, label: student.alias },
          fundamental: { href: trackHref(summary), label: sayFundamental(words, fundamental) },
          text: sayWatch(words, watch, fundamental.unit, null).listed,
        },
      ];
    })
    .sort((a, b) => b.raisedOn.localeCompare(a.raisedOn) || a.fundamental.href.localeCompare(b.fundamental.href));
  if (items.length === 0) return null;
  return {
    margin: words.say("roster.margin.watch"),
    heading: words.say("roster.watch.heading", { count: items.length }),
    items: items.map(({ raisedOn: _, ...item }) => item),
  };
}
