import { findFundamental } from "@/lib/domain/catalogue";
import type { Interval, ProvedChange, TrackVerdict } from "@/lib/domain/track-verdict";
import type { HistorySession } from "@/lib/verdict/session-history";
import type { TrackHistory } from "@/lib/verdict/track-history";

export const intervalOf = (estimate: number): Interval => ({
  ...{ estimate, low95: estimate - 0.6, high95: estimate + 0.6, low80: estimate - 0.4, high80: estimate + 0.4 },
});

/** A made-up film of one swing: its day, its value, the days since practice; `lesson`: in a lesson. */
export function filmOf(
  day: string,
  value: number,
  daysSincePractice: number | null = null,
  kind: "unaided" | "lesson" = "unaided",
): HistorySession {
  const apart = kind === "lesson" ? { kind: "circumstance", circumstance: "in-lesson", aid: null } : null;
  const session = { day, daysSincePractice, clubGroup: "iron" };
  return { session, swings: [{ value }], captureSd: 0.5, index: 0, apart } as unknown as HistorySession;
}

/** A gain of the hinge from 80 to 88 between 1 and 10 August. */
export const GAIN = {
  ...{ verdict: "gain", shape: "step", from: "2026-08-01", to: "2026-08-10", moved: null, provedOn: "2026-08-20" },
  ...{ size: intervalOf(8), before: intervalOf(80), after: intervalOf(88), set80: null, set95: null },
} as ProvedChange;

/** The hinge's track with some films, proved to have gained, or whatever the change says. */
export function trackOf(
  films: readonly HistorySession[],
  verdict: Partial<TrackVerdict> = {},
): { readonly history: TrackHistory; readonly verdict: TrackVerdict } {
  const fundamental = findFundamental("hinge", []);
  const goal = { low: 85, high: 95 };
  const history = { fundamental, clubGroup: "iron", sessions: films, goal, judged: {} } as unknown as TrackHistory;
  const gain = { verdict: "gain", listed: true, moved: null, change: GAIN, changes: [GAIN], levelNow: intervalOf(88) };
  const errorBudget = { day: 1, swing: 0.5, reader: 0.5, camera: 0.5 };
  return { history, verdict: { ...gain, position: "inside", errorBudget, ...verdict } as unknown as TrackVerdict };
}
