import { dayFromNumber } from "@/lib/domain/calendar-day";
import type { JudgedTrack } from "@/lib/domain/judged-track";
import { exponentialPath, flat, type LevelPath, levelAt, step } from "@/seed/level-path";
import { between, type Random, randomFrom, whole } from "@/seed/random";
import { type SeasonPlan, simulateSeason, unevenDays } from "@/seed/simulate";
import { unitOf, usualPlan } from "./population";

/** What is true of a track that may be nearing its band; sizes in U. */
export interface ReachTruth {
  readonly name: string;
  /** Whole gain; 0: the level never moves. */
  readonly gain: number;
  /** Sessions, or as many mean gaps, in which a factor e of what is missing is gained; 0: all at once. */
  readonly scale: number;
  /** Whether the near edge lies within the gain (at .4 to .95 of it), beyond its end (1.05 to 1.5), or .1 to .9 U beyond. */
  readonly edge: "within" | "beyond" | "just-beyond";
}

/** A track stopped at its last film, and when its true level first lies inside. */
export interface NearingTrack {
  readonly track: JudgedTrack;
  /** Day number of the last film. */
  readonly today: number;
  /** Day number, parts of a day included; null: never. */
  readonly reachedOn: number | null;
  /** What the level goes by. */
  readonly clock: "sessions" | "days";
  readonly rhythm: "weekly" | "usual";
}

/** Sessions planned beyond the film, so that a level that goes by sessions has days to go on. */
const AHEAD = 80;

/** The film and the change as drawn: the true level lies outside the band at the last session. */
interface Drawn {
  readonly sessions: number;
  readonly start: number;
  /** Near edge, in U. */
  readonly edge: number;
}

function drawn(truth: ReachTruth, random: Random): Drawn {
  for (;;) {
    const sessions = whole(random, 8, 20);
    const start = whole(random, 2, Math.min(7, sessions - 4));
    const edge =
      truth.gain === 0
        ? between(random, 2, 6)
        : truth.edge === "just-beyond"
          ? truth.gain + between(random, 0.1, 0.9)
          : truth.gain * (truth.edge === "within" ? between(random, 0.4, 0.95) : between(random, 1.05, 1.5));
    if (levelAt(pathOf(truth, start, 1), sessions - 1) < edge) return { sessions, start, edge };
  }
}

function pathOf({ gain, scale }: ReachTruth, start: number, unit: number): LevelPath {
  if (gain === 0) return flat(0);
  return scale === 0 ? step(0, gain * unit, start + 1) : exponentialPath(0, gain * unit, start, scale);
}

/**
 * One track, determined by seed and number. Films come every 4 to 13 days, in one of five tracks every 3 to 50; every other
 * level goes by sessions, the others by days.
 */
export function simulateNearing(truth: ReachTruth, seed: number, number: number): NearingTrack {
  const random = randomFrom(seed, number);
  const clock = number % 2 === 0 ? "sessions" : "days";
  const rhythm = number % 5 === 4 ? "usual" : "weekly";
  const { sessions, start, edge } = drawn(truth, random);
  const usual = usualPlan(sessions + AHEAD, random);
  if (usual.camera.kind === "given") throw new RangeError("the usual camera is drawn");
  const days = rhythm === "usual" ? usual.days : unevenDays(20_000, sessions + AHEAD, 4, 13, random);
  const past = <T>(list: readonly T[]): T[] => list.slice(0, sessions);
  const filmed: SeasonPlan = {
    ...usual,
    days: past(days),
    swingCounts: past(usual.swingCounts),
    camera: { kind: "drawn", sds: past(usual.camera.sds), placements: past(usual.camera.placements) },
  };
  const unit = unitOf(filmed);
  const dayAt = (session: number): number => days[session] as number;
  const gap = (dayAt(days.length - 1) - dayAt(0)) / (days.length - 1);
  const positions = days.map((day, i) => (clock === "sessions" ? i : (day - dayAt(0)) / gap));
  const path = pathOf(truth, clock === "sessions" ? start : (positions[start] as number), unit);
  const season = simulateSeason({ ...filmed, path, positions: past(positions) }, random);
  const low = edge * unit;
  const { camera } = filmed;
  return {
    today: dayAt(sessions - 1),
    clock,
    rhythm,
    reachedOn: truth.gain > 0 && edge < truth.gain ? reached(truth, positions[start] as number, edge) : null,
    track: {
      id: `${truth.name}-${number}`,
      goal: { low, high: low + 2 * between(random, 1, 3) * unit },
      readerSd: 1,
      sessions: season.map((session, i) => ({
        date: dayFromNumber(session.day),
        captureSd: camera.kind === "drawn" ? (camera.sds[i] as number) : 0,
        swings: session.swings,
      })),
    },
  };

  function reached({ gain, scale }: ReachTruth, from: number, at: number): number {
    const position = from - scale * Math.log(1 - at / gain);
    if (clock === "days") return dayAt(0) + position * gap;
    const before = Math.min(days.length - 2, Math.floor(position));
    return dayAt(before) + (position - before) * (dayAt(before + 1) - dayAt(before));
  }
}
