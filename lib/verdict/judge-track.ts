import type { JudgedTrack } from "@/lib/domain/judged-track";
import type { LookVerdict, TrackVerdict } from "@/lib/domain/track-verdict";
import { misreadings } from "@/lib/stats/misreadings";
import { trend } from "@/lib/stats/trend";
import { decideReach } from "./decide-reach";
import type { LookClaims } from "./decide-words";
import { errorBudget } from "./error-budget";
import { trackOn } from "./goal-at";
import { ownedLooks } from "./owned-looks";
import type { Policy } from "./policy";
import type { ListedLook } from "./roster-list";
import { pointingOf } from "./settle-if-real";
import { APART_OUTLOOK, NO_OUTLOOK, type Outlook, settleOutlook } from "./settle-plan";
import type { NoiseFor } from "./track-looks";
import { changesOf, levelAt, limitNow, openTrack, posteriorAt, shareAt, type TrackState, wordAt } from "./track-state";
import { decidePosition, smallestWorthwhile } from "./worth";

/** How much is wanted: the verdict as of the last session, or also what would have been said at every look. */
export type Detail = "latest" | "looks";

/** A verdict, and with `looks` what the roster's list needs of each look. */
export interface Judgement {
  readonly verdict: TrackVerdict;
  /** One entry a look with `looks`; empty with `latest`. */
  readonly listedLooks: readonly ListedLook[];
}

/** Why a reading is set aside: it lies too far from its session's median. */
const MISREADING = "misreading";

/** Probability that nothing lasting happened, from the evidence and the share of tracks that change. */
export function noChangeProbability(logBayesFactor: number, priorChange: number): number {
  if (priorChange >= 1) return 0;
  return 1 / (1 + (priorChange / (1 - priorChange)) * Math.exp(logBayesFactor));
}

/**
 * The verdict on one track, as of its last session, and with `looks` at every look.
 *
 * A verdict at a look depends on the track's own sessions up to it, the policy and the noise model of that look, on
 * nothing else. Under four used sessions it is open; level, place and share are given from the first used session on.
 *
 * @param track the judged input; sessions in any order
 * @param noiseFor the noise model of a name, among those of the track's pool
 * @throws RangeError on numbers that no parsed track can hold
 */
export function judgeTrack(track: JudgedTrack, noiseFor: NoiseFor, policy: Policy, detail: Detail): Judgement {
  const state = openTrack(track, noiseFor, policy);
  const { judged, looks, said } = state;
  const last = judged.sessions.length - 1;
  const now = said[last];
  const noise = looks.noise(last);
  const verdict = last < 0 ? "open" : wordAt(state, last);
  const found = posteriorAt(state, last);
  const early = found === null && last >= 0 ? state.early(last) : null;
  const sizes = found ?? early;
  const levelNow = levelAt(state, last);
  const changes = changesOf(state);
  const change = changes.at(-1) ?? null;
  const slope = last < 0 ? null : trend(judged.series, noise);
  const logBayesFactor = now?.evidence.logBayesFactor ?? 0;
  const worthwhileTo = (asked: JudgedTrack): number | null =>
    sizes === null ? (asked.smallestWorthwhile ?? null) : smallestWorthwhile(asked, sizes.unitSd, policy);
  const lastDay = judged.sessions[last]?.date;
  const directionUp = now?.evidence.directionUp ?? 0.5;
  const noChange = noChangeProbability(logBayesFactor, noise.priorChange);
  const apart = verdict === "open" && last >= 0 ? state.apart(last) : null;
  const outlook = (): Outlook => {
    if (verdict !== "open") return NO_OUTLOOK;
    if (apart !== null) return APART_OUTLOOK;
    return settleOutlook(track, judged, noise, sizes, pointingOf(noChange, directionUp), policy);
  };
  const position = levelNow === null || track.goal === undefined ? null : decidePosition(levelNow, track.goal);
  const owned = ownedLooks(state, policy).at(-1);
  const every = detail === "latest" ? [] : judged.sessions.map((_, at) => listedLook(state, at));
  return {
    verdict: {
      id: track.id,
      policyVersion: policy.version,
      sessions: judged.sessions.length,
      swings: judged.sessions.reduce((sum, session) => sum + session.swings.length, 0),
      verdict,
      assumed: track.goal === undefined && track.better === undefined ? "up" : null,
      moved: change?.moved ?? null,
      evidence: {
        logBayesFactor,
        directionUp,
        limit: limitNow(state, policy),
        noChange,
        priorChange: noise.priorChange,
      },
      // What the word was decided with; how far it is to the goal of now is asked with that goal's.
      smallestWorthwhile: worthwhileTo(lastDay === undefined ? track : trackOn(track, lastDay)),
      unitSd: sizes?.unitSd ?? null,
      noiseModel: noise.id,
      changes,
      change,
      changeBelow: verdict === "open" && last >= 0 ? looks.changeBelow(now?.start ?? 0, last, policy) : null,
      notToldApart: apart,
      levelNow,
      bandShare: shareAt(state, last),
      trend: slope?.kind === "ok" ? slope.value : null,
      ...outlook(),
      setAside: misreadings(judged.series).map((at) => ({
        session: at.group,
        swing: at.replicate,
        why: MISREADING,
      })),
      position,
      reach: decideReach(state, { changes, levelNow, position, worthwhile: worthwhileTo(track) }),
      ownedSince: owned?.since ?? null,
      watch: owned?.watch ?? null,
      errorBudget: sizes === null ? null : errorBudget(judged.series, sizes.daySd, sizes.replicateSd),
      ...(detail === "looks" ? { looks: judged.sessions.map((_, at) => lookVerdict(state, at)) } : {}),
    },
    listedLooks: every,
  };
}

function lookVerdict(state: TrackState, at: number): LookVerdict {
  const { evidence } = state.said[at] as LookClaims;
  return {
    date: (state.judged.sessions[at] as { date: string }).date,
    verdict: wordAt(state, at),
    logBayesFactor: evidence.logBayesFactor,
    directionUp: evidence.directionUp,
  };
}

function listedLook(state: TrackState, at: number): ListedLook {
  const { evidence, start } = state.said[at] as LookClaims;
  return {
    day: (state.judged.series.groups[at] as { day: number }).day,
    verdict: wordAt(state, at),
    logBayesFactor: evidence.logBayesFactor,
    start,
    adds: state.facts[at]?.adds === true,
  };
}
