import type { CalendarDay } from "@/lib/domain/calendar-day";
import type { JudgedTrack } from "@/lib/domain/judged-track";
import type { Interval, NotToldApart, ProvedChange, Verdict } from "@/lib/domain/track-verdict";
import type { Posterior } from "@/lib/stats/look";
import { decideClaims, decideWord, heldBy, type LookClaims, type LookFacts, lookBefore } from "./decide-words";
import { describeChange, newLevelOf } from "./describe-change";
import { type EarlyLevel, earlyLevel } from "./early-level";
import { trackOn } from "./goal-at";
import { type JudgedSeries, judgedSeries, stretchAt } from "./judged-series";
import { limitAt } from "./limit-at";
import { notToldApart } from "./not-told-apart";
import type { Policy } from "./policy";
import { limitAfter } from "./proved-direction";
import { type NoiseFor, type TrackLooks, trackLooks } from "./track-looks";
import { decideWorth, smallestWorthwhile } from "./worth";

/** Everything that is asked of a track's looks; what isn't asked for isn't worked out. */
export interface TrackState {
  readonly track: JudgedTrack;
  readonly judged: JudgedSeries;
  readonly looks: TrackLooks;
  readonly facts: readonly LookFacts[];
  readonly said: readonly LookClaims[];
  readonly policy: Policy;
  /** Level before the first look; null: no used session. */
  early(look: number): EarlyLevel | null;
  /** What a move can't be told apart from (see `notToldApart`). */
  apart(look: number): NotToldApart | null;
}

/** An answer a look, worked out once and only when asked for. */
function keptByLook<T>(answer: (look: number) => T): (look: number) => T {
  const kept = new Map<number, T>();
  return (look) => {
    if (!kept.has(look)) kept.set(look, answer(look));
    return kept.get(look) as T;
  };
}

/** Opens a track for judging; indices everywhere are positions in date order. */
export function openTrack(track: JudgedTrack, noiseFor: NoiseFor, policy: Policy): TrackState {
  const judged = judgedSeries(track, policy);
  const looks = trackLooks(judged, noiseFor);
  const proved = (start: number, look: number) => {
    const found = looks.posterior(start, look);
    if (found === null) throw new RangeError(`no change can be proved by sessions ${start} to ${look}`);
    return found;
  };
  const dates = judged.sessions.map((session) => session.date);
  const trackThen = keptByLook((look) => trackOn(track, dates[look] as CalendarDay));
  const apart = keptByLook((look) => notToldApart(stretchAt(judged, 0, look), dates, looks.noise(look), policy));
  const facts = judged.sessions.map(
    (_, at): LookFacts => ({
      limit: limitAt(at + 1, policy),
      adds: judged.series.groups[at]?.used === true,
      evidence: (start) => looks.evidence(start, at),
      newLevel: (start) => newLevelOf(proved(start, at), at),
      wordOf: (claim) => decideWorth(trackThen(claim.provedAt), proved(claim.start, at), claim.direction, policy),
      // A move that a new reader or place would explain as well isn't holding.
      steady: () =>
        looks.steady(at, (unitSd) => smallestWorthwhile(trackThen(at), unitSd, policy), policy) && apart(at) === null
          ? "steady"
          : "open",
    }),
  );
  return {
    track,
    judged,
    looks,
    facts,
    said: decideClaims(facts, policy),
    policy,
    early: keptByLook((look) => earlyLevel(stretchAt(judged, 0, look), looks.noise(look), policy)),
    apart,
  };
}

/** The word of a look. */
export function wordAt(state: TrackState, look: number): Verdict {
  return decideWord(state.facts[look] as LookFacts, state.said[look] as LookClaims);
}

/** The engine's answer on the stretch that the word of a look rests on; null before the first look. */
export function posteriorAt(state: TrackState, look: number): Posterior | null {
  return state.looks.posterior(state.said[look]?.start ?? 0, look);
}

/** Level as of a look, in the unit; null without a used session. */
export function levelAt(state: TrackState, look: number): Interval | null {
  return (posteriorAt(state, look) ?? state.early(look))?.level ?? null;
}

/** The day on which the change was proved whose word a look says; null: none is proved. */
export function provedOnAt({ said, judged }: TrackState, look: number): CalendarDay | null {
  const claim = said[look]?.claims.at(-1);
  return claim === undefined ? null : (judged.sessions[claim.provedAt]?.date ?? null);
}

/** Share of swings inside the goal as of a look, 0 to 1; null without a goal or a used session. */
export function shareAt(state: TrackState, look: number, goal = state.track.goal): Interval | null {
  return goal === undefined ? null : ((posteriorAt(state, look) ?? state.early(look))?.share(goal) ?? null);
}

/**
 * The proved changes in force at the last look, in order.
 *
 * A change that a later one has settled is told from the sessions before the later one's stretch of doubt, where they
 * still prove what they proved; else from the sessions up to the look before the later proof.
 */
export function changesOf(state: TrackState): readonly ProvedChange[] {
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
export function limitNow({ facts, said }: TrackState, policy: Policy): number {
  const last = facts.length - 1;
  const look = facts[last];
  if (look === undefined || last + 1 < policy.firstLook) return limitAt(policy.firstLook, policy) + policy.limitAlone;
  const start = said[last]?.start ?? 0;
  const before = lookBefore(facts, last);
  const held = (at: LookFacts) => heldBy(at, start, policy);
  return limitAfter(held(look), () => (before === undefined ? null : held(before)), null, policy);
}
