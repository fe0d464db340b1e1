import type { JudgedTrack } from "@/lib/domain/judged-track";
import type { Direction, TrackVerdict } from "@/lib/domain/track-verdict";
import type { Series } from "@/lib/stats/series";
import type { Plan } from "./cheapest-plan";
import { type LookBelief, lookBelief } from "./look-belief";
import { type Futures, futuresOf, type Planning, planningOf } from "./plan-futures";
import { type Policy, SETTLE_SWINGS } from "./policy";
import { proves } from "./proves";
import { settles } from "./quick-look";
import { limitIfNothing } from "./settle-if-nothing";
import { meantChange, pointingOf } from "./settle-if-real";
import type { NoiseFor } from "./track-looks";
import { openTrack, posteriorAt } from "./track-state";
import { smallestWorthwhile } from "./worth";

/** What one plan would tell of an open track. */
export interface PlanAnswer {
  readonly sessions: number;
  readonly swingsEach: number;
  /** Camera sd of each further session, in the unit. */
  readonly captureSd: number;
  /** Share of futures that the plan settles, whatever is true, 0 to 1. */
  readonly settles: number;
  /** Given a lasting change the way the track points, at least as big as it looks; null: it points nowhere. */
  readonly ifReal: {
    readonly direction: Direction;
    /** In the unit; above 0 for up. */
    readonly size: number;
    /** Of the condition. */
    readonly probability: number;
    /** Share of futures in which the plan proves it. */
    readonly proves: number;
  } | null;
  /** Given that nothing has changed and nothing will; null: still too few sessions for a look. */
  readonly ifNothing: {
    /** Any change would be known to be smaller than this, in the unit. */
    readonly changeBelow: number;
    /** Of that. */
    readonly chance: number;
  } | null;
}

/** Of a plan that is asked for: whole numbers within what plans are made of. */
export function isAskable({ sessions, swingsEach, care }: Plan, policy: Policy): boolean {
  const whole = (value: number, least: number, most: number): boolean =>
    Number.isInteger(value) && value >= least && value <= most;
  return (
    whole(sessions, 1, Math.round(policy.settleSessions)) &&
    whole(swingsEach, Math.min(...SETTLE_SWINGS), Math.max(...SETTLE_SWINGS)) &&
    care > 0 &&
    care <= 1
  );
}

/**
 * What one given plan would tell of an open track, by the very futures from which the plan on offer was chosen: the plan on
 * offer, asked here, gets exactly the chance that it was offered with.
 *
 * @param track as it was judged, with its starting belief
 * @param verdict that of the track
 * @param plan `care`: share of the usual camera error, above 0 to 1
 * @returns null where nothing is asked: the track isn't open, no session counts, or more films can't tell
 * @throws RangeError on a plan that no track can be asked
 */
export function askPlan(
  track: JudgedTrack,
  verdict: TrackVerdict,
  plan: Plan,
  noiseFor: NoiseFor,
  policy: Policy,
): PlanAnswer | null {
  if (!isAskable(plan, policy)) throw new RangeError(`no plan: ${JSON.stringify(plan)}`);
  if (verdict.verdict !== "open" || verdict.notToldApart !== null) return null;
  const state = openTrack(track, noiseFor, policy);
  const last = state.judged.sessions.length - 1;
  const belief = last < 0 ? null : (posteriorAt(state, last) ?? state.early(last));
  if (belief === null) return null;
  const noise = state.looks.noise(last);
  const { series } = state.judged;
  const planning = planningOf(series, noise, policy);
  const now = lookBelief(series, noise, belief);
  const ahead = futuresOf(planning, now.whole(), Math.round(policy.settleDraws));
  const worthwhile = (unitSd: number): number => smallestWorthwhile(track, unitSd, policy);
  const { sessions, swingsEach, care } = plan;
  return {
    ...{ sessions, swingsEach, captureSd: ahead.captureSd * care },
    settles: shareOf(ahead, plan, (future) => settles(future, planning.thin, worthwhile, policy)),
    ifReal: ifReal(planning, now, verdict, plan),
    ifNothing: ifNothing(planning, now, plan),
  };
}

/** As the search for a plan counts it, to the last digit. */
function shareOf(ahead: Futures, plan: Plan, told: (series: Series) => boolean): number {
  let misses = 0;
  for (let draw = 0; draw < ahead.count; draw++) if (!told(ahead.of(plan, draw))) misses++;
  return 1 - misses / ahead.count;
}

function ifReal(planning: Planning, now: LookBelief, { evidence }: TrackVerdict, plan: Plan): PlanAnswer["ifReal"] {
  const { series, thin, policy } = planning;
  const pointed = meantChange(now, pointingOf(evidence.noChange, evidence.directionUp), policy);
  if (pointed === null) return null;
  const { direction, size, probability, meant } = pointed;
  const proved = (future: Series): boolean => proves(future, series.groups.length, thin, direction, policy);
  const asBig = futuresOf(planning, meant, Math.round(policy.settleDraws));
  return { direction, size, probability, proves: shareOf(asBig, plan, proved) };
}

function ifNothing(planning: Planning, now: LookBelief, plan: Plan): PlanAnswer["ifNothing"] {
  const still = futuresOf(planning, now.unchanged(), Math.round(planning.policy.settleExcludeDraws));
  const changeBelow = limitIfNothing(planning, still, plan);
  return changeBelow === null ? null : { changeBelow, chance: planning.policy.settleChance };
}
