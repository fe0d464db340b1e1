import type { ClubGroup } from "@/lib/domain/club-group";
import type { Edges } from "@/lib/domain/fundamental";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import type { TrackHistory } from "@/lib/verdict/track-history";
import type { SessionMark } from "./chart-model";

/** What a list of tracks needs of one track; kept beside the whole analysis. */
export interface TrackSummary {
  readonly studentId: string;
  readonly fundamentalId: string;
  readonly clubGroup: ClubGroup;
  readonly verdict: TrackVerdict;
  readonly goal: Edges;
  /** Date order, each with the mean of its swings. */
  readonly sessions: readonly { readonly date: string; readonly mean: number; readonly mark: SessionMark }[];
}

/** The summary of a judged track. */
export function buildTrackSummary(history: TrackHistory, verdict: TrackVerdict): TrackSummary {
  return {
    studentId: history.studentId,
    fundamentalId: history.fundamental.id,
    clubGroup: history.clubGroup,
    verdict,
    goal: { low: history.goal.low, high: history.goal.high },
    sessions: history.sessions.map((entry) => ({
      date: entry.session.day,
      mean: entry.swings.reduce((sum, swing) => sum + swing.value, 0) / entry.swings.length,
      mark: entry.apart === null ? "used" : entry.apart.kind === "circumstance" ? "aided" : "set-aside",
    })),
  };
}
