import { dayFromNumber } from "@/lib/domain/calendar-day";
import type { Edges } from "@/lib/domain/fundamental";
import type { Direction, Interval, Position, ProvedChange, Reach, ReachObstacle } from "@/lib/domain/track-verdict";
import { type Approach, exponentialApproach } from "@/lib/stats/exponential-approach";
import { firstPassage } from "@/lib/stats/first-passage";
import { lookData } from "@/lib/stats/look-data";
import type { Outcome } from "@/lib/stats/outcome";
import { passageRange } from "@/lib/stats/passage-range";
import type { Claim } from "./decide-words";
import { stretchAt } from "./judged-series";
import { REACH_PACES, REACH_SCALES } from "./reach-thresholds";
import { thinNoise } from "./thin-noise";
import type { TrackState } from "./track-state";

/** What is known of a track at its last look. */
export interface ReachQuestion {
  /** Proved changes in force, in order, one a claim. */
  readonly changes: readonly ProvedChange[];
  readonly levelNow: Interval | null;
  readonly position: Position | null;
  /** Smallest worthwhile change, in the unit. */
  readonly worthwhile: number | null;
}

const unsaid = (why: ReachObstacle): Reach => ({ kind: "unsaid", why });

/**
 * When a proved gain first lies inside its goal band: a range of dates, that it has stopped short, or why neither can be said.
 *
 * It is asked where a change is proved, there is a goal, and the level isn't inside; worked out only where the change is a
 * gain and the level lies outside with its whole interval. Proved changes in a row that go the same way are one approach,
 * whose old level is that before the first of them. Dates are counted from the last used session and never lie beyond the
 * horizon. A prefix of the track says the same as it said then.
 *
 * @returns null where it is no question
 */
export function decideReach(state: TrackState, question: ReachQuestion): Reach | null {
  const { changes, levelNow, position, worthwhile } = question;
  const claims = state.said.at(-1)?.claims ?? [];
  const [change, claim] = [changes.at(-1), claims.at(-1)];
  if (change === undefined || claim === undefined || levelNow === null || worthwhile === null) return null;
  if (position === null || position === "inside" || change.verdict === "steady") return null;
  if (change.verdict === "slip") return position === "outside" ? unsaid("away") : null;
  const edge = edgeAhead(claim.direction, levelNow.estimate, state.track.goal);
  // It went through the band and out on the other side, which is said elsewhere.
  if (edge === null) return null;
  if (position === "edge") return unsaid("close");
  const first = firstOfRun(claims);
  if (usedSince(state, (changes[first] as ProvedChange).from) < state.policy.reachSessions) return unsaid("too-few");
  const approach = approachOf(state, (claims[first] as Claim).start);
  if (approach.kind === "too-few") return unsaid("too-few");
  return foretold(state, approach.value, { edge, direction: claim.direction, worthwhile, level: levelNow.estimate });
}

/** The edge of the goal that a level moves toward; null: there is none ahead. */
function edgeAhead(direction: Direction, level: number, goal: Edges | undefined): number | null {
  const edge = (direction === "up" ? goal?.low : goal?.high) ?? null;
  if (edge === null) return null;
  return (direction === "up" ? edge - level : level - edge) > 0 ? edge : null;
}

/** The first of the latest claims in a row that go the same way. */
export function firstOfRun(claims: readonly Claim[]): number {
  const turned = claims.findLastIndex((claim) => claim.direction !== claims.at(-1)?.direction);
  return turned + 1;
}

/** Used sessions after the last one that surely lay on the old level. */
function usedSince({ judged }: TrackState, day: string): number {
  return judged.sessions.filter((session, i) => session.date > day && judged.series.groups[i]?.used).length;
}

/** All approaches that the films of a run allow, from its first session to the latest look. */
export function approachOf({ judged, looks, policy }: TrackState, start: number): Outcome<Approach> {
  const last = judged.sessions.length - 1;
  return exponentialApproach(lookData(stretchAt(judged, start, last), thinNoise(looks.noise(last))), {
    scales: REACH_SCALES,
    stepShare: policy.reachStep,
    gainSd: policy.reachGainSd,
  });
}

interface Target {
  readonly edge: number;
  readonly direction: Direction;
  readonly worthwhile: number;
  readonly level: number;
}

function foretold({ judged, policy }: TrackState, approach: Approach, target: Target): Reach {
  const { edge, direction, worthwhile } = target;
  const passage = firstPassage(approach, edge, direction, REACH_PACES);
  const already = passage.reachedBy(0);
  const chance = passage.reachedBy(policy.reachHorizon);
  const range = chance < policy.reachChance ? null : passageRange(passage, policy.reachHeld, policy.reachHorizon);
  if (already < policy.reachAlready && range !== null) {
    const today = judged.series.groups.findLast((group) => group.used)?.day ?? 0;
    const dayAfter = (days: number): string => dayFromNumber(today + days);
    return {
      kind: "dates",
      from: dayAfter(Math.floor(range.from)),
      to: dayAfter(Math.ceil(range.to)),
      chance,
      horizon: dayAfter(Math.floor(policy.reachHorizon)),
    };
  }
  if (already >= policy.reachAlready || Math.abs(edge - target.level) < worthwhile) return unsaid("close");
  // Short of the edge by less than anybody would miss is as good as there.
  const missed = direction === "up" ? edge - worthwhile : edge + worthwhile;
  const short = firstPassage(approach, missed, direction, REACH_PACES).never;
  if (short >= policy.reachNever) return { kind: "stopped-short", chance: short };
  return unsaid(passage.never >= policy.reachNever ? "close" : "too-wide");
}
