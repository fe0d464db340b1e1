import { dayNumber } from "@/lib/domain/calendar-day";
import type { Reach } from "@/lib/domain/track-verdict";
import type { NoiseModel } from "@/lib/stats/noise-model";
import { decideReach } from "@/lib/verdict/decide-reach";
import { noiseAlways } from "@/lib/verdict/noise";
import { POLICY } from "@/lib/verdict/policy";
import { changesOf, levelAt, openTrack, posteriorAt, type TrackState } from "@/lib/verdict/track-state";
import { decidePosition, smallestWorthwhile } from "@/lib/verdict/worth";
import { type NearingTrack, type ReachTruth, simulateNearing } from "./reach-population";

/** What was said of one track about its band, and whether it held. */
export interface ReachScore extends Pick<NearingTrack, "clock" | "rhythm"> {
  readonly truth: ReachTruth;
  /** Null: it was no question, so no change toward or away from the band stood proved. */
  readonly said: Exclude<Reach, { kind: "unsaid" }>["kind"] | Extract<Reach, { kind: "unsaid" }>["why"] | null;
  /** Whether the band lay outside the level's whole interval and a gain toward it stood proved, so that dates were looked for. */
  readonly asked: boolean;
  /** Where dates were said: their weeks, and on which side of them the truth lay. */
  readonly range: { readonly weeks: number; readonly truth: "within" | "earlier" | "later" } | null;
}

/** What the verdict says of the band, and nothing else that a verdict takes time for. */
function reachAt(state: TrackState): { readonly reach: Reach | null; readonly asked: boolean } {
  const last = state.facts.length - 1;
  const changes = changesOf(state);
  const [found, levelNow] = [posteriorAt(state, last), levelAt(state, last)];
  const { goal } = state.track;
  if (found === null || levelNow === null || goal === undefined || changes.length === 0)
    return { reach: null, asked: false };
  const position = decidePosition(levelNow, goal);
  const worthwhile = smallestWorthwhile(state.track, found.unitSd, state.policy);
  return {
    reach: decideReach(state, { changes, levelNow, position, worthwhile }),
    asked: changes.at(-1)?.verdict === "gain" && position === "outside",
  };
}

/** Judges one simulated track and holds what is said of its band against the truth. */
export function scoreReach(truth: ReachTruth, noise: NoiseModel, seed: number, number: number): ReachScore {
  const { track, today, reachedOn, clock, rhythm } = simulateNearing(truth, seed, number);
  const { reach, asked } = reachAt(openTrack(track, noiseAlways(noise), POLICY));
  const range = reach?.kind === "dates" ? { from: dayNumber(reach.from), to: dayNumber(reach.to) } : null;
  return {
    truth,
    clock,
    rhythm,
    said: reach === null ? null : reach.kind === "unsaid" ? reach.why : reach.kind,
    asked,
    range:
      range === null ? null : { weeks: (range.to - Math.max(range.from, today)) / 7, truth: sideOf(reachedOn, range) },
  };
}

function sideOf(
  day: number | null,
  { from, to }: { readonly from: number; readonly to: number },
): "within" | "earlier" | "later" {
  if (day === null || Math.floor(day) > to) return "later";
  return Math.floor(day) < from ? "earlier" : "within";
}
