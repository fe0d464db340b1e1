import { dayNumber } from "@/lib/domain/calendar-day";
import type { JudgedTrack } from "@/lib/domain/judged-track";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import type { Approach, ApproachNode } from "@/lib/stats/exponential-approach";
import { mixtureQuantile } from "@/lib/stats/mixture-quantile";
import { normalMixture } from "@/lib/stats/normal-mixture";
import { approachOf, firstOfRun } from "./decide-reach";
import type { Claim } from "./decide-words";
import type { Policy } from "./policy";
import { REACH_PACES } from "./reach-thresholds";
import type { NoiseFor } from "./track-looks";
import { openTrack } from "./track-state";

/** The level by a day, in the unit: its middle, and the stretch that holds 80 of 100. */
export interface CurvePoint {
  /** Day number. */
  readonly day: number;
  readonly middle: number;
  readonly low: number;
  readonly high: number;
}

/** Stretches between two points of a curve, at most; a curve bends slower than a drawing shows. */
const STRETCHES = 28;

/** Where the sessions of a run lie: day numbers of the used ones, in date order. */
interface Run {
  readonly days: readonly number[];
  readonly gapDays: number;
}

/** How far past the last session a day is, in usual gaps by each clock; below 0 before it. */
function gapsOf({ days, gapDays }: Run, day: number, clock: ApproachNode["clock"]): number {
  const last = days.length - 1;
  const ahead = (day - (days[last] as number)) / gapDays;
  if (ahead >= 0 || clock === "days") return ahead;
  const next = days.findIndex((each) => each >= day);
  const [to, from] = [days[next] as number, days[next - 1] as number];
  const part = next <= 0 ? 0 : to === from ? 0 : (to - day) / (to - from);
  return Math.max(0, next) - part - last;
}

/** Share of its gain that a node has reached so many gaps after the last session. */
function reachedShare(node: ApproachNode, gaps: number): number {
  const since = node.since + gaps;
  if (since <= 0) return 0;
  return node.scale === 0 ? 1 : -Math.expm1(-since / node.scale);
}

function pointAt(approach: Approach, run: Run, day: number): CurvePoint {
  const parts = approach.nodes.flatMap((node) => {
    const gaps = gapsOf(run, day, node.clock);
    const paces = gaps > 0 && node.clock === "groups" && node.scale > 0 ? REACH_PACES : [{ factor: 1, share: 1 }];
    return paces.map(({ factor, share }) => {
      const off = reachedShare(node, gaps * factor) - node.centre;
      return {
        weight: node.weight * share,
        mean: node.centreLevel + off * node.gain,
        variance: node.centreVariance + off * off * node.gainVariance,
      };
    });
  });
  const level = normalMixture(
    Float64Array.from(parts, ({ weight }) => weight),
    Float64Array.from(parts, ({ mean }) => mean),
    Float64Array.from(parts, ({ variance }) => variance),
  );
  const at = (probability: number): number => mixtureQuantile(level, probability);
  return { day, low: at(0.1), middle: at(0.5), high: at(0.9) };
}

/**
 * The learning curve by which dates of reaching the band are said, or that a gain has stopped short of it: the level from the
 * last session on the old one to the last film, and where dates are said on to the last of them. It is the very belief
 * that the dates come from, and is worked out for nothing else: no curve is drawn past what is said.
 *
 * @param track as it was judged, with its starting belief
 * @param verdict that of the track
 * @returns points in order of days; null where neither dates nor a stop is said
 */
export function reachCurve(
  track: JudgedTrack,
  verdict: TrackVerdict,
  noiseFor: NoiseFor,
  policy: Policy,
): readonly CurvePoint[] | null {
  const { reach, changes } = verdict;
  if (reach === null || reach.kind === "unsaid") return null;
  const state = openTrack(track, noiseFor, policy);
  const claims = state.said.at(-1)?.claims ?? [];
  const first = firstOfRun(claims);
  const [claim, change] = [claims[first] as Claim | undefined, changes[first]];
  if (claim === undefined || change === undefined) return null;
  const approach = approachOf(state, claim.start);
  if (approach.kind === "too-few") return null;
  const used = state.judged.series.groups.slice(claim.start).filter((group) => group.used);
  const run: Run = { days: used.map((group) => group.day), gapDays: approach.value.gapDays };
  const from = dayNumber(change.from);
  const to = reach.kind === "dates" ? dayNumber(reach.to) : (run.days.at(-1) as number);
  const stretches = Math.max(1, Math.min(STRETCHES, to - from));
  return Array.from({ length: stretches + 1 }, (_, nth) =>
    pointAt(approach.value, run, Math.round(from + ((to - from) * nth) / stretches)),
  );
}
