import normalCdf from "@stdlib/stats-base-dists-normal-cdf";
import { dayFromNumber } from "@/lib/domain/calendar-day";
import type { JudgedTrack } from "@/lib/domain/judged-track";
import type { NoiseModel } from "@/lib/stats/noise-model";
import type { Series } from "@/lib/stats/series";
import { judgedSeries } from "@/lib/verdict/judged-series";
import { learnNoise } from "@/lib/verdict/noise";
import { POLICY } from "@/lib/verdict/policy";
import type { LevelPath } from "@/seed/level-path";
import { between, oneOf, type Random, randomFrom, whole } from "@/seed/random";
import { type SeasonPlan, simulateSeason, swingCounts, type TrueNoise, unevenDays } from "@/seed/simulate";

/** A season in units of U, the sd of one session mean: its length, its level, and what is unlike the usual. */
export interface Scenario {
  readonly name: string;
  readonly sessions: number;
  /** Level in U; the change's first session, where there is one, is drawn per series. */
  readonly path: (changeAt: number) => LevelPath;
  /** Sessions between which the change's first one is drawn, both included; null: it never changes. */
  readonly change: readonly [number, number] | null;
  /** What differs from the usual plan, given the usual one and U. */
  readonly unlike?: (plan: SeasonPlan, unit: number, random: Random) => SeasonPlan;
  /** Factor on the camera sds that the track states; 1: stated honestly. */
  readonly stated?: number;
  /** Whether sessions name the placement that they share. */
  readonly labelled?: "labelled";
}

/** A simulated track with what is true of it. */
export interface SimulatedTrack {
  readonly track: JudgedTrack;
  readonly unit: number;
  /** First session of the new level; null: it never changes. */
  readonly changeAt: number | null;
  /** True levels in the track's unit, one a session. */
  readonly levels: readonly number[];
  /** True share of swings inside the track's goal at the last level; null: swings that aren't normal. */
  readonly shareInside: number | null;
}

/** A goal band somewhere about the last level, and the share of true swings inside it. */
function goalAround(level: number, noise: TrueNoise, random: Random): GoalTruth {
  const spread = Math.hypot(noise.daySd, noise.swingSd) * (noise.spreadChange?.factor ?? 1);
  const middle = level + between(random, -1, 1) * spread;
  const half = between(random, 0.5, 2) * spread;
  const goal = { low: middle - half, high: middle + half };
  const inside = normalCdf(goal.high, level, spread) - normalCdf(goal.low, level, spread);
  return { goal, shareInside: noise.tails === "normal" ? inside : null };
}

function scaled(path: LevelPath, by: number): LevelPath {
  switch (path.kind) {
    case "flat":
      return { ...path, level: path.level * by };
    case "steps":
      return { ...path, levels: path.levels.map((level) => level * by) };
    default:
      return { ...path, from: path.from * by, to: path.to * by };
  }
}

/** A student like the others of the academy: day sd, swing sd and correlation are drawn, cameras and swings vary by session. */
export function usualPlan(sessions: number, random: Random): SeasonPlan {
  const counts = swingCounts(sessions, 3, 8, random).map((m) => (random.uniform() < 0.1 ? whole(random, 1, 2) : m));
  return {
    days: unevenDays(20_000, sessions, 3, 50, random),
    swingCounts: counts,
    path: { kind: "flat", level: 0 },
    noise: {
      daySd: between(random, 0.8, 2.4),
      correlation: between(random, 0, 0.3),
      neighbour: "session",
      swingSd: between(random, 2, 4),
      readerSd: 1,
      tails: "normal",
      spreadChange: null,
    },
    camera: {
      kind: "drawn",
      sds: Array.from({ length: sessions }, () => oneOf(random, [0.5, 1, 1.5, 2])),
      placements: new Array<string | null>(sessions).fill(null),
    },
    rounding: 0,
    misreading: { share: 0, size: 8 },
    oddSession: null,
  };
}

interface GoalTruth {
  readonly goal: { readonly low: number; readonly high: number };
  readonly shareInside: number | null;
}

/** The sd of one session mean, from what is true. */
export function unitOf(plan: SeasonPlan): number {
  const { noise, camera, swingCounts: counts } = plan;
  const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
  const cameraVariance = camera.kind === "drawn" ? mean(camera.sds.map((sd) => sd * sd)) : 0;
  const swing = (noise.swingSd ** 2 + noise.readerSd ** 2) * mean(counts.map((m) => 1 / m));
  return Math.sqrt(noise.daySd ** 2 + cameraVariance + swing);
}

/** One series of a scenario, determined by seed and number. */
export function simulateTrack(scenario: Scenario, seed: number, number: number): SimulatedTrack {
  const random = randomFrom(seed, number);
  const usual = usualPlan(scenario.sessions, random);
  const changeAt = scenario.change === null ? null : whole(random, scenario.change[0], scenario.change[1]);
  const unlike = scenario.unlike?.(usual, unitOf(usual), random) ?? usual;
  const unit = unitOf(unlike);
  const plan = { ...unlike, path: scaled(scenario.path(changeAt ?? 0), unit) };
  const season = simulateSeason(plan, random);
  const { camera } = plan;
  const levels = season.map((session) => session.truth.level);
  // A stream of its own: the season stays what it was without a goal.
  const { goal, shareInside } = goalAround(levels.at(-1) as number, plan.noise, randomFrom(seed, 9_000_000 + number));
  return {
    unit,
    changeAt,
    levels,
    shareInside,
    track: {
      id: `${scenario.name}-${number}`,
      goal,
      better: "up",
      readerSd: 1,
      sessions: season.map((session, i) => {
        const label = scenario.labelled && camera.kind === "drawn" ? camera.placements[i] : null;
        const captureSd = camera.kind === "drawn" ? (camera.sds[i] as number) * (scenario.stated ?? 1) : 0;
        return {
          date: dayFromNumber(session.day),
          captureSd,
          swings: session.swings,
          ...(label ? { captureSetup: label } : {}),
        };
      }),
    },
  };
}

/** The share of an academy's students that truly change. */
const CHANGING = 0.4;

/** An academy of students of 8 to 24 sessions, two in five of whom change by 1 to 3 U; the noise that they teach. */
export function learnAcademy(students: number, seed: number): NoiseModel {
  return learnNoise(academyPool(students, seed), POLICY);
}

/** The tracks of such an academy. */
export function academyPool(students: number, seed: number): readonly Series[] {
  const random = randomFrom(seed, 1_000_000);
  return Array.from({ length: students }, (_, number) => {
    const sessions = whole(random, 8, 24);
    const size = (random.uniform() < 0.5 ? -1 : 1) * between(random, 1, 3);
    const changes = random.uniform() < CHANGING;
    const scenario: Scenario = {
      name: "academy",
      sessions,
      path: (at) => ({ kind: "steps", levels: [0, changes ? size : 0], at: [at] }),
      change: [3, sessions - 3],
    };
    return judgedSeries(simulateTrack(scenario, seed, 2_000_000 + number).track, POLICY).series;
  });
}
