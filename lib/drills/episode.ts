import type { Hand } from "@/lib/domain/handedness";
import type { Policy } from "@/lib/verdict/policy";
import { mean, type ScoredSession } from "./scored-track";

/** The sessions before a start, in one figure each. */
export interface Before {
  /** Mean of the last sessions before the start. */
  readonly run: number;
  /** Mean and slope per session of those before the run; null where they are too few. */
  readonly earlier: { readonly mean: number; readonly slope: number } | null;
}

/** What one outcome was before and after a start: the score, or the share inside the band. */
export interface Outcomes {
  readonly before: Before;
  /** The run taken shorter. */
  readonly shorter: Before;
  /** Mean of the next used sessions from the start. */
  readonly after: number;
  /** Mean of the used sessions well after the end; null: none. */
  readonly retained: number | null;
}

/** A student's first time on a drill, or a stretch without one after an equally bad run. */
export interface Episode {
  readonly student: string;
  readonly coach: string;
  /** Null: without a drill. */
  readonly drill: string | null;
  /** Whether the stretch without a drill was marked as waiting on purpose. */
  readonly marked: boolean;
  readonly byChance: boolean;
  readonly start: number;
  readonly sessions: number;
  /** Days from the last session before the start to the middle of the next sessions; and of the retained ones, null: none. */
  readonly toMiddle: number;
  readonly toRetained: number | null;
  readonly score: Outcomes;
  /** Share of pairs of a session before and one after in which the later is better. */
  readonly higher: number;
  readonly inBand: Outcomes | null;
  readonly minutes: number | null;
  /** Another drill began within the sessions that count. */
  readonly overlapped: boolean;
  readonly ageYears: number | null;
  readonly hand: Hand | null;
}

/** The figures before position `at` of values in date order; at least one value stands before it. */
export function beforeAt(values: readonly number[], at: number, runSessions: number, policy: Policy): Before {
  const run = values.slice(Math.max(0, at - runSessions), at);
  const earlier = values.slice(0, Math.max(0, at - runSessions));
  if (run.length < runSessions || earlier.length < policy.earlierSessions) return { run: mean(run), earlier: null };
  const middle = (earlier.length - 1) / 2;
  const squares = earlier.reduce((sum, _, i) => sum + (i - middle) ** 2, 0);
  const slope = earlier.reduce((sum, value, i) => sum + (i - middle) * value, 0) / squares;
  return { run: mean(run), earlier: { mean: mean(earlier), slope } };
}

/** The sessions before, from and well after a start. */
export interface Windows {
  readonly at: number;
  readonly after: readonly ScoredSession[];
  readonly retained: readonly ScoredSession[];
}

/** The outcomes of one kind over the windows of a start. */
export function outcomesOf(
  sessions: readonly ScoredSession[],
  { at, after, retained }: Windows,
  of: (session: ScoredSession) => number,
  policy: Policy,
): Outcomes {
  const values = sessions.map(of);
  return {
    before: beforeAt(values, at, policy.runSessions, policy),
    shorter: beforeAt(values, at, policy.otherRunSessions, policy),
    after: mean(after.map(of)),
    retained: retained.length === 0 ? null : mean(retained.map(of)),
  };
}
