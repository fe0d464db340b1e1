import type { JudgedTrack } from "@/lib/domain/judged-track";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import type { NoiseModel } from "@/lib/stats/noise-model";
import type { JudgedSeries } from "./judged-series";
import { lookBelief, type SettleBelief } from "./look-belief";
import { askedPlan, attainableCares, cheapestTelling, futuresOf, planningOf } from "./plan-futures";
import type { Policy } from "./policy";
import { settles } from "./quick-look";
import { settleIfNothing } from "./settle-if-nothing";
import { type Pointing, settleIfReal } from "./settle-if-real";
import { smallestWorthwhile } from "./worth";

/** What further sessions would tell of an open track. */
export type Outlook = Pick<TrackVerdict, "settle" | "settleIfReal" | "settleIfNothing" | "usualCaptureSd">;

/** Of a track that isn't open nothing is planned. */
export const NO_OUTLOOK: Outlook = { settle: null, settleIfReal: null, settleIfNothing: null, usualCaptureSd: null };

/** A move that can't be told apart from a new reader or place: more films of the same kind tell nothing. */
export const APART_OUTLOOK: Outlook = {
  ...NO_OUTLOOK,
  settle: { none: "not-told-apart", sessionsToFirstLook: 0 },
};

/**
 * What further sessions would tell of an open track: the cheapest plan that settles it, whatever is true; the cheapest
 * that proves the change it points to, if that is real; and what the largest excludes, if nothing has changed.
 *
 * Futures are drawn from what is believed of this track now, its level staying where it is; each is appended to the
 * real sessions, a usual gap apart, and judged by the engine, with a noise model of fewer cells. The draws are evenly
 * spread points, the same at every call, so the answer is a function of the track alone.
 *
 * @param belief null: no used session yet, so nothing to draw from
 * @param fixedCare share of the usual camera error that every plan has; undefined: whichever is cheapest among those to be had
 */
export function settleOutlook(
  track: JudgedTrack,
  { series }: JudgedSeries,
  noise: NoiseModel,
  belief: SettleBelief | null,
  pointing: Pointing,
  policy: Policy,
  fixedCare?: number,
): Outlook {
  const used = series.groups.filter((group) => group.used).length;
  const sessionsToFirstLook = Math.max(0, policy.firstLook - used);
  const none = { none: sessionsToFirstLook > 0 ? "first-look" : "no-plan", sessionsToFirstLook } as const;
  if (belief === null) return { ...NO_OUTLOOK, settle: none };
  const planning = planningOf(series, noise, policy);
  const now = lookBelief(series, noise, belief);
  const worthwhile = (unitSd: number): number => smallestWorthwhile(track, unitSd, policy);
  const ahead = futuresOf(planning, now.whole(), Math.round(policy.settleDraws));
  const cares = fixedCare === undefined ? attainableCares(ahead.captureSd, track.checkedCaptureSd) : [fixedCare];
  const settled = cheapestTelling(ahead, (future) => settles(future, planning.thin, worthwhile, policy), policy, cares);
  return {
    settle: settled === null ? none : askedPlan(settled.plan, ahead.captureSd, settled.chance),
    settleIfReal: settleIfReal(planning, now, pointing, cares),
    settleIfNothing: settleIfNothing(planning, now, cares),
    usualCaptureSd: ahead.captureSd,
  };
}
