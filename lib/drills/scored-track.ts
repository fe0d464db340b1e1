import { dayNumber } from "@/lib/domain/calendar-day";
import type { ComparedTrack } from "@/lib/domain/compared-track";
import type { JudgedSession } from "@/lib/domain/judged-track";
import { huberCentre } from "@/lib/stats/huber-centre";
import { replicateSd } from "@/lib/stats/replicate-sd";
import type { Policy } from "@/lib/verdict/policy";

/** One used session: how good it was. */
export interface ScoredSession {
  readonly day: number;
  /** In the unit, more is better: the value or its opposite, or less the distance from the goal band. */
  readonly score: number;
  /** Share of its swings inside the goal band, 0 to 1; null without a goal. */
  readonly inBand: number | null;
  /** Days since the last practice; null: not known. */
  readonly rested: number | null;
}

/** Swings farther than this many sds from their session's middle count less: as the verdict takes a session's value. */
const HUBER = 1.5;

/**
 * The used sessions of a track in date order, each with a score of which more is better, in the unit.
 *
 * `better` decides its direction; without it a goal with one edge; with two edges the score is less the mean distance of a
 * swing from the band, so that going through and out on the other side is no gain; with neither, up is better.
 */
export function scoredTrack(track: ComparedTrack, policy: Policy): readonly ScoredSession[] {
  const used = track.sessions.filter((session) => session.use !== false && session.swings.length > 0);
  const value = sessionValue(track, policy, used);
  return used
    .map((session, given) => ({ session, given, day: dayNumber(session.date) }))
    .sort((a, b) => a.day - b.day || a.given - b.given)
    .map(({ session, day }) => ({
      day,
      score: value(session),
      inBand: share(track, session),
      rested: session.daysSincePractice ?? null,
    }));
}

function sessionValue(
  { better, goal, readerSd }: ComparedTrack,
  policy: Policy,
  used: readonly JudgedSession[],
): (session: JudgedSession) => number {
  const low = goal?.low ?? null;
  const high = goal?.high ?? null;
  if (better === undefined && low !== null && high !== null)
    return ({ swings }) => -mean(swings.map((swing) => Math.max(0, low - swing, swing - high)));
  const down = better === "down" || (better === undefined && low === null && high !== null);
  if (used.length === 0) return () => 0;
  const { sd } = replicateSd(
    used.map((session) => session.swings),
    readerSd ?? policy.readerSd,
    null,
  );
  return ({ swings }) => (down ? -1 : 1) * huberCentre(swings, HUBER * sd);
}

function share({ goal }: ComparedTrack, { swings }: JudgedSession): number | null {
  if (goal === undefined) return null;
  const low = goal.low ?? Number.NEGATIVE_INFINITY;
  const high = goal.high ?? Number.POSITIVE_INFINITY;
  return swings.filter((swing) => swing >= low && swing <= high).length / swings.length;
}

/** The plain mean of at least one value. */
export function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
