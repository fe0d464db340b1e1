import type { JudgedTrack } from "@/lib/domain/judged-track";
import type { Interval, LookVerdict, ProvedChange, TrackVerdict, Verdict } from "@/lib/domain/track-verdict";
import { misreadings } from "@/lib/stats/misreadings";
import { trend } from "@/lib/stats/trend";
import { decideClaims, decideWord, heldBy, type LookClaims, type LookFacts, lookBefore } from "./decide-words";
import { describeChange, newLevelOf } from "./describe-change";
import { type EarlyLevel, earlyLevel } from "./early-level";
import { errorBudget } from "./error-budget";
import { trackOn } from "./goal-at";
import { type JudgedSeries, judgedSeries, stretchOf } from "./judged-series";
import { limitAt } from "./limit-at";
import { ownedSince } from "./owned-since";
import type { Policy } from "./policy";
import { limitAfter } from "./proved-direction";
import type { ListedLook } from "./roster-list";
import { settlePlan } from "./settle-plan";
import { type NoiseFor, type TrackLooks, trackLooks } from "./track-looks";
import { decidePosition, decideWorth, smallestWorthwhile } from "./worth";

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

/** Everything that is asked of a track's looks; what isn't asked for isn't worked out. */
interface TrackState {
  readonly track: JudgedTrack;
  readonly judged: JudgedSeries;
  readonly looks: TrackLooks;
  readonly facts: readonly LookFacts[];
  readonly said: readonly LookClaims[];
  readonly policy: Policy;
  early(look: number): EarlyLevel | null;
}

function openTrack(track: JudgedTrack, noiseFor: NoiseFor, policy: Policy): TrackState {
  const judged = judgedSeries(track, policy);
  const looks = trackLooks(judged, noiseFor);
  const proved = (start: number, look: number) => {
    const found = looks.posterior(start, look);
    if (found === null) throw new RangeError(`no change can be proved by sessions ${start} to ${look}`);
    return found;
  };
  const facts = judged.sessions.map(
    (_, at): LookFacts => ({
      limit: limitAt(at + 1, policy),
      adds: judged.series.groups[at]?.used === true,
      evidence: (start) => looks.evidence(start, at),
      newLevel: (start) => newLevelOf(proved(start, at), at),
      wordOf: (claim) => {
        const provedOn = (judged.sessions[claim.provedAt] as { date: string }).date;
        return decideWorth(trackOn(track, provedOn), proved(claim.start, at), claim.direction, policy);
      },
      steady: () => (looks.steady(at, track.smallestWorthwhile ?? null, policy) ? "steady" : "open"),
    }),
  );
  const early = new Map<number, EarlyLevel | null>();
  return {
    track,
    judged,
    looks,
    facts,
    said: decideClaims(facts, policy),
    policy,
    early: (look) => {
      if (!early.has(look)) early.set(look, earlyLevel(stretchOf(judged.series, 0, look), looks.noise(look), policy));
      return early.get(look) ?? null;
    },
  };
}

function wordAt(state: TrackState, look: number): Verdict {
  return decideWord(state.facts[look] as LookFacts, state.said[look] as LookClaims);
}

/** The engine's answer on the stretch that the word of a look rests on; null before the first look. */
function posteriorAt(state: TrackState, look: number) {
  return state.looks.posterior(state.said[look]?.start ?? 0, look);
}

function levelAt(state: TrackState, look: number): Interval | null {
  return (posteriorAt(state, look) ?? state.early(look))?.level ?? null;
}

function shareAt(state: TrackState, look: number): Interval | null {
  const { goal } = state.track;
  return goal === undefined ? null : ((posteriorAt(state, look) ?? state.early(look))?.share(goal) ?? null);
}

/**
 * The proved changes in force at the last look, in order.
 *
 * A change that a later one has settled is told from the sessions before the later one's stretch of doubt, where they
 * still prove what they proved; else from the sessions up to the look before the later proof.
 */
function changesOf(state: TrackState): readonly ProvedChange[] {
  const last = state.facts.length - 1;
  const claims = state.said[last]?.claims ?? [];
  return claims.map((claim, nth) => {
    const later = claims[nth + 1];
    let end = last;
    if (later !== undefined) {
      const next = state.looks.posterior(later.start, later.provedAt);
      const doubt = next === null ? later.provedAt : (next.set95[0] ?? next.rampStart10);
      end = Math.min(later.provedAt - 1, Math.max(doubt - 1, claim.newLevel.surelyFrom + 1));
    }
    const found = state.looks.posterior(claim.start, end) ?? state.looks.posterior(claim.start, claim.provedAt);
    if (found === null) throw new RangeError(`a change without evidence, proved at look ${claim.provedAt}`);
    return describeChange(state.track, state.judged, claim, found, end, state.policy);
  });
}

/** What the evidence of the latest look has to reach, given the look before; before the first look, what that will ask. */
function limitNow({ facts, said }: TrackState, policy: Policy): number {
  const last = facts.length - 1;
  const look = facts[last];
  if (look === undefined || last + 1 < policy.firstLook) return limitAt(policy.firstLook, policy) + policy.limitAlone;
  const start = said[last]?.start ?? 0;
  const before = lookBefore(facts, last);
  return limitAfter(heldBy(look, start), () => (before === undefined ? null : heldBy(before, start)), null, policy);
}

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
  const worthwhile =
    sizes === null ? (track.smallestWorthwhile ?? null) : smallestWorthwhile(track, sizes.unitSd, policy);
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
        directionUp: now?.evidence.directionUp ?? 0.5,
        limit: limitNow(state, policy),
        noChange: noChangeProbability(logBayesFactor, noise.priorChange),
        priorChange: noise.priorChange,
      },
      smallestWorthwhile: worthwhile,
      unitSd: sizes?.unitSd ?? null,
      noiseModel: noise.id,
      changes,
      change,
      changeBelow: verdict === "open" && last >= 0 ? looks.changeBelow(now?.start ?? 0, last, policy) : null,
      levelNow,
      bandShare: shareAt(state, last),
      trend: slope?.kind === "ok" ? slope.value : null,
      settle: verdict === "open" ? settlePlan(track, judged, noise, found ?? early, policy) : null,
      setAside: misreadings(judged.series).map((at) => ({
        session: at.group,
        swing: at.replicate,
        why: MISREADING,
      })),
      position: levelNow === null || track.goal === undefined ? null : decidePosition(levelNow, track.goal),
      ownedSince: ownedSince(
        track,
        judged,
        judged.sessions.map((_, at) => ({
          level: () => levelAt(state, at),
          share: () => shareAt(state, at),
          verdict: () => wordAt(state, at),
        })),
        policy,
      ),
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
