import { dayFromNumber } from "@/lib/domain/calendar-day";
import type { JudgedTrack } from "@/lib/domain/judged-track";
import type { NoiseModel } from "@/lib/stats/noise-model";
import { noiseAlways } from "@/lib/verdict/noise";
import { ownedLooks } from "@/lib/verdict/owned-looks";
import { POLICY } from "@/lib/verdict/policy";
import { openTrack, wordAt } from "@/lib/verdict/track-state";
import { flat, step } from "@/seed/level-path";
import { between, type Random, randomFrom, whole } from "@/seed/random";
import { type SeasonPlan, simulateSeason } from "@/seed/simulate";
import { unitOf, usualPlan } from "./population";

/** What happens in a season that is to be owned. */
export interface OwnedSeason {
  readonly name: string;
  /** Loss in U, toward the nearer edge; 0: none. */
  readonly loss: number;
  /** What is unlike the usual plan, given U. */
  readonly unlike?: (plan: SeasonPlan, unit: number, random: Random) => SeasonPlan;
  /** Edges of the goal: one on the side that is lost to, two about the level, or either by chance. */
  readonly edges: "one" | "two" | "either";
}

/** One season of an owned track and what the watch made of it. */
export interface WatchedSeason {
  /** Used sessions up to the look from which it was owned; null: it never was in time. */
  readonly ownedFrom: number | null;
  /** Session of the first alarm, 0-based; null: none. */
  readonly alarmAt: number | null;
  /** Of a loss: its first session, and sessions from it, itself counted, to the alarm; null: none within four. */
  readonly lossAt: number | null;
  readonly alarmAfter: number | null;
  /** Of a loss: sessions to the proof of a change for the worse, alone or before the alarm; null: none within four. */
  readonly provedAfter: number | null;
}

const SEASON = 40;
const LOSS_BETWEEN = [8, 35] as const;
/** Sessions in which a loss may be alarmed. */
export const WATCHED = 4;

function goalOf(edges: OwnedSeason["edges"], sign: 1 | -1, plan: SeasonPlan, random: Random): JudgedTrack["goal"] {
  const spread = Math.hypot(plan.noise.daySd, plan.noise.swingSd);
  const near = between(random, 1.3, 2.2) * spread;
  const far = near + between(random, 0, 1.5) * spread;
  const both = edges === "either" ? random.uniform() < 0.5 : edges === "two";
  const [low, high] = sign < 0 ? [-near, far] : [-far, near];
  return { low: sign < 0 || both ? low : null, high: sign > 0 || both ? high : null };
}

/** One owned season, determined by seed and number: as it is filmed, practice more than a week ago each time. */
function ownedTrack(season: OwnedSeason, seed: number, number: number) {
  const random = randomFrom(seed, number);
  const usual = usualPlan(SEASON, random);
  const unit = unitOf(usual);
  const sign = random.uniform() < 0.5 ? -1 : 1;
  const lossAt = whole(random, LOSS_BETWEEN[0], LOSS_BETWEEN[1]);
  const goal = goalOf(season.edges, sign, usual, random);
  const path = season.loss === 0 ? flat(0) : step(0, sign * season.loss * unit, lossAt);
  const plan = { ...(season.unlike?.(usual, unit, random) ?? usual), path };
  const filmed = simulateSeason(plan, random).slice(0, season.loss === 0 ? SEASON : lossAt + WATCHED);
  const { camera } = plan;
  const track: JudgedTrack = {
    id: `${season.name}-${number}`,
    goal,
    readerSd: 1,
    sessions: filmed.map((session, i) => ({
      date: dayFromNumber(session.day),
      captureSd: camera.kind === "drawn" ? (camera.sds[i] as number) : 0,
      swings: session.swings,
      daysSincePractice: 10,
    })),
  };
  return { track, lossAt: season.loss === 0 ? null : lossAt, direction: sign > 0 ? "up" : "down" };
}

/** Watches one season look after look. */
export function watchSeason(season: OwnedSeason, noise: NoiseModel, seed: number, number: number): WatchedSeason {
  const { track, lossAt, direction } = ownedTrack(season, seed, number);
  const state = openTrack(track, noiseAlways(noise), POLICY);
  const looks = ownedLooks(state, POLICY);
  const first = looks.findIndex((look) => look.since !== null);
  const alarmAt = looks.findIndex((look) => look.watch !== null);
  const none = { ownedFrom: null, alarmAt: null, lossAt: null, alarmAfter: null, provedAfter: null };
  if (first < 0) return none;
  const alarmed = { ownedFrom: first + 1, alarmAt: alarmAt < 0 ? null : alarmAt };
  if (lossAt === null) return { ...none, ...alarmed };
  const before = looks[lossAt - 1];
  // A loss counts where the track is owned and at rest when it begins.
  if (before === undefined || before.since === null || before.watch !== null) return none;
  const after = (holds: (at: number) => boolean): number | null => {
    const found = Array.from({ length: WATCHED }, (_, i) => lossAt + i).find(holds);
    return found === undefined ? null : found - lossAt + 1;
  };
  return {
    ...alarmed,
    lossAt,
    alarmAfter: after((at) => looks[at]?.watch?.direction === direction),
    provedAfter: after((at) => wordAt(state, at) === "slip"),
  };
}
