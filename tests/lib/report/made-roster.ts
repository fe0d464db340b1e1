import type { RosterView } from "@/lib/domain/roster-view";
import { WHOLE_ROSTER } from "@/lib/domain/roster-view";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import type { RosterFacts } from "@/lib/report/filter-roster";
import type { RosterStudent } from "@/lib/report/roster-source";
import type { TrackSummary } from "@/lib/report/track-summary";

export const TODAY = "2026-09-12";

/** A view that asks for what is given and nothing else. */
export const viewOf = (over: Partial<RosterView>): RosterView => ({ ...WHOLE_ROSTER, ...over });

/** A track as far as a roster's filters look at it. */
export function track(fundamentalId: string, verdict: Partial<TrackVerdict>, clubGroup = "iron"): TrackSummary {
  const made = { verdict: "open", change: null, moved: null, listed: false, position: "edge", ...verdict };
  return { fundamentalId, clubGroup, verdict: made, sessions: [] } as unknown as TrackSummary;
}

/** A track with a proved change that stands on the list. */
export const proved = (fundamentalId: string, verdict: "gain" | "slip", provedOn: string): TrackSummary =>
  track(fundamentalId, { verdict, listed: true, position: "inside", change: { provedOn } as TrackVerdict["change"] });

/** A student with tracks, last filmed on a day. */
export function student(
  alias: string,
  lastDay: string | null = TODAY,
  summaries: readonly TrackSummary[] = [],
): RosterStudent {
  const made = { student: { id: alias.toLowerCase(), alias }, lastDay, summaries, askings: [], contact: null };
  return made as unknown as RosterStudent;
}

/** What filters rest on besides the rows: nobody has a coach and no list holds anybody unless given. */
export function facts(over: Partial<RosterFacts> = {}): RosterFacts {
  return {
    coaches: new Map(),
    lists: new Map(),
    need: () => 0,
    proved: () => new Set<string>(),
    counted: () => new Set<string>(),
    today: TODAY,
    locale: "en",
    ...over,
  };
}
