import { dayFromNumber } from "@/lib/domain/calendar-day";
import type { JudgedTrack } from "@/lib/domain/judged-track";
import type { ExcludingPlan, TrackVerdict } from "@/lib/domain/track-verdict";
import type { NoiseModel } from "@/lib/stats/noise-model";
import { judgeTrack } from "@/lib/verdict/judge-track";
import { judgedSeries } from "@/lib/verdict/judged-series";
import { noiseAlways } from "@/lib/verdict/noise";
import { POLICY } from "@/lib/verdict/policy";
import { changeBelow } from "@/lib/verdict/quick-look";
import { flat, type LevelPath, step } from "@/seed/level-path";
import { normal, type Random, randomFrom, whole } from "@/seed/random";
import { type SeasonPlan, simulateSeason } from "@/seed/simulate";
import { unitOf, usualPlan } from "./population";

/** What is true of a track before it is stopped at: unchanged, or a lasting change of so many U either way. */
export interface Truth {
  readonly name: string;
  readonly shape: "flat" | "odd" | "step" | "ramp";
  /** In U; `prior`: as the engine believes before it has seen anything. */
  readonly size: number | "prior";
}

/** A plan as it was promised and what came of it. */
export interface Followed {
  readonly sessions: number;
  readonly chance: number;
  readonly kept: boolean;
}

/** One track stopped at one look, and what came of what was said there. */
export interface StoppedTrack {
  readonly truth: string;
  /** True lasting change at the look and since, in U; 0: none. */
  readonly size: number;
  readonly look: number;
  readonly open: boolean;
  /** The plan that settles; null: none was offered. */
  readonly settle: Followed | null;
  /** The plan that proves the change pointed to, if it is real. */
  readonly ifReal: (Followed & { readonly condition: "met" | "smaller" | "not" }) | null;
  /** Which of the largest plan's limits were kept; null: not asked. */
  readonly excluded: boolean | null;
  /** Limit promised, over the one known when the track was stopped at. */
  readonly excludedRatio: number | null;
}

/** Further sessions, and with how many swings and how much camera error; null: they have not come. */
type Ahead = { readonly sessions: number; readonly swingsEach: number; readonly captureSd: number } | null;

/** One simulated track, to be seen up to a look and with any plan followed: its past is the same each time. */
interface Simulated {
  readonly unit: number;
  readonly size: number;
  readonly look: number;
  readonly follow: (ahead: Ahead) => JudgedTrack;
}

const LONGEST = Math.round(POLICY.settleSessions);
const LOOKS = [5, 16] as const;

function pathOf(truth: Truth, size: number, look: number, random: Random): LevelPath {
  if (truth.shape === "step") return step(0, size, whole(random, 1, look - 1));
  if (truth.shape === "ramp")
    return { kind: "ramp", from: 0, to: size, start: whole(random, 0, look - 3), end: look - 1 };
  return flat(0);
}

function simulate(truth: Truth, seed: number, number: number): Simulated {
  const random = randomFrom(seed, number);
  const look = whole(random, LOOKS[0], LOOKS[1]);
  const usual = usualPlan(look + LONGEST, random);
  if (usual.camera.kind === "given") throw new RangeError("the usual camera is drawn");
  const { sds, placements } = usual.camera;
  const past = { swingCounts: usual.swingCounts.slice(0, look), sds: sds.slice(0, look) };
  const unit = unitOf({ ...usual, swingCounts: past.swingCounts, camera: { ...usual.camera, sds: past.sds } });
  const drawn = 2 * normal(random);
  const sign = random.uniform() < 0.5 ? -1 : 1;
  const changes = truth.shape === "step" || truth.shape === "ramp";
  const size = !changes ? 0 : truth.size === "prior" ? drawn : sign * truth.size;
  const oddSession = truth.shape === "odd" ? { at: whole(random, 0, look - 1), by: 4 * unit * normal(random) } : null;
  const path = pathOf(truth, size * unit, look, random);
  const gaps = usual.days.slice(1, look).map((day, i) => day - (usual.days[i] as number));
  const gap = [...gaps].sort((a, b) => a - b)[gaps.length >> 1] as number;
  const follow = (ahead: Ahead): JudgedTrack => {
    const count = look + (ahead?.sessions ?? 0);
    const planned = <T>(before: readonly T[], value: T): T[] =>
      Array.from({ length: look + LONGEST }, (_, i) => (i < look ? (before[i] as T) : value));
    const plan: SeasonPlan = {
      ...usual,
      days: Array.from({ length: look + LONGEST }, (_, i) =>
        i < look ? (usual.days[i] as number) : (usual.days[look - 1] as number) + (i - look + 1) * gap,
      ),
      swingCounts: planned(past.swingCounts, ahead?.swingsEach ?? 1),
      camera: { kind: "drawn", sds: planned(past.sds, ahead?.captureSd ?? 1), placements },
      path,
      oddSession,
    };
    // The same stream each time, drawn in the order of the sessions, so the past comes out the same.
    const season = simulateSeason(plan, randomFrom(seed, 500_000_000 + number)).slice(0, count);
    return {
      id: `${truth.name}-${number}`,
      better: "up",
      readerSd: 1,
      sessions: season.map((session, i) => ({
        date: dayFromNumber(session.day),
        captureSd: plan.camera.kind === "drawn" ? (plan.camera.sds[i] as number) : 0,
        swings: session.swings,
      })),
    };
  };
  return { unit, size, look, follow };
}

/** The policy without a search for further plans. */
const AFTER = { ...POLICY, settleSessions: 1, settleDraws: 5, settleExcludeDraws: 5, settlePointing: 1 };

/** Stops at a look of a simulated track, follows what is offered there with the whole engine, and says what came of it. */
export function scoreStopped(truth: Truth, noise: NoiseModel, seed: number, number: number): StoppedTrack {
  const { unit, size, look, follow } = simulate(truth, seed, number);
  const { verdict } = judgeTrack(follow(null), noiseAlways(noise), POLICY, "latest");
  const wordAfter = (ahead: Ahead): TrackVerdict["verdict"] =>
    judgeTrack(follow(ahead), noiseAlways(noise), AFTER, "latest").verdict.verdict;
  const { settle, settleIfReal, settleIfNothing } = verdict;
  const ifReal = settleIfReal === null || "none" in settleIfReal ? null : settleIfReal;
  return {
    truth: truth.name,
    size,
    look,
    open: verdict.verdict === "open",
    settle:
      settle === null || "none" in settle
        ? null
        : { sessions: settle.sessions, chance: settle.chance, kept: wordAfter(settle) !== "open" },
    ifReal:
      ifReal === null
        ? null
        : {
            sessions: ifReal.sessions,
            chance: ifReal.chance,
            kept: wordAfter(ifReal) === (ifReal.direction === "up" ? "gain" : "slip"),
            condition: conditionOf(size * unit, ifReal.size),
          },
    excluded: settleIfNothing === null || size !== 0 ? null : excluded(follow, settleIfNothing, noise),
    excludedRatio:
      settleIfNothing === null || verdict.changeBelow === null
        ? null
        : settleIfNothing.changeBelow / verdict.changeBelow,
  };
}

function conditionOf(truth: number, meant: number): "met" | "smaller" | "not" {
  if (truth * meant <= 0) return "not";
  return Math.abs(truth) >= Math.abs(meant) ? "met" : "smaller";
}

/** Whether the largest plan, followed, shows any change to be as small as was said. */
function excluded(follow: Simulated["follow"], plan: ExcludingPlan, noise: NoiseModel): boolean {
  const limit = changeBelow(judgedSeries(follow(plan), POLICY).series, noise, POLICY);
  return limit !== null && limit <= plan.changeBelow;
}
