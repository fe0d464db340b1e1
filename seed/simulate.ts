import { type LevelPath, levelAt } from "./level-path";
import { heavyTailed, normal, type Random, whole } from "./random";

/** How a simulated track wavers around its true level; sds in the unit of the track. */
export interface TrueNoise {
  /** Sd of the day effect, which all swings of a session share. */
  readonly daySd: number;
  /** Correlation of the day effect between neighbours, 0 to below 1. */
  readonly correlation: number;
  /** What a neighbour is: the session before (`session`), or ten days (`ten-days`). */
  readonly neighbour: "session" | "ten-days";
  /** Sd of a swing around its session's day, before reading. */
  readonly swingSd: number;
  /** Sd of the error of one reading. */
  readonly readerSd: number;
  /** Shape of day effect and swings: both have the sds above. */
  readonly tails: "normal" | "t4";
  /** From session `from` on, day and swing sds are `factor` times as large; null: they stay. */
  readonly spreadChange: { readonly from: number; readonly factor: number } | null;
}

/** The camera's part: drawn here from sds and placements, or given session by session in the unit. */
export type TrueCamera =
  | {
      readonly kind: "drawn";
      /** Sd of the camera error of each session. */
      readonly sds: readonly number[];
      /** Sessions of one label share one standardised draw; null: a draw of its own. */
      readonly placements: readonly (string | null)[];
    }
  | { readonly kind: "given"; readonly errors: readonly number[] };

/** What one simulated season of one track is made of. */
export interface SeasonPlan {
  /** Day number of each session, rising. */
  readonly days: readonly number[];
  /** Swings of each session, same order. */
  readonly swingCounts: readonly number[];
  readonly path: LevelPath;
  /** Where each session stands on the path; absent: at its own number. */
  readonly positions?: readonly number[];
  readonly noise: TrueNoise;
  readonly camera: TrueCamera;
  /** Values are rounded to multiples of it; 0: not rounded. */
  readonly rounding: number;
  /** A misreading falls on each reading with probability `share` and moves it by `size` swing sds either way. */
  readonly misreading: { readonly share: number; readonly size: number };
  /** One odd session is moved by `by`; null: none. */
  readonly oddSession: { readonly at: number; readonly by: number } | null;
}

/** One session as it was read, and what was true of it. */
export interface SimulatedSession {
  readonly day: number;
  readonly swings: readonly number[];
  readonly truth: {
    readonly level: number;
    readonly dayEffect: number;
    readonly cameraError: number;
    /** What each swing was, before camera and reader. */
    readonly swings: readonly number[];
    /** Positions of the swings that were misread. */
    readonly misread: readonly number[];
  };
}

/** Rounds half away from zero, never to minus zero. */
export function roundTo(value: number, unit: number): number {
  if (unit === 0) return value;
  const rounded = Math.sign(value) * Math.round(Math.abs(value) / unit) * unit;
  return rounded === 0 ? 0 : Number(rounded.toFixed(6));
}

function correlationBetween(noise: TrueNoise, days: number): number {
  return noise.neighbour === "session" ? noise.correlation : noise.correlation ** (Math.max(1, days) / 10);
}

/** Day effects of sd 1: stationary, first-order autoregressive. */
export function dayEffects(days: readonly number[], noise: TrueNoise, random: Random): number[] {
  const draw = noise.tails === "t4" ? heavyTailed : normal;
  const effects: number[] = [];
  days.forEach((day, i) => {
    const before = effects[i - 1];
    const r = before === undefined ? 0 : correlationBetween(noise, day - (days[i - 1] as number));
    effects.push((before ?? 0) * r + Math.sqrt(1 - r * r) * draw(random));
  });
  return effects;
}

/** Camera error of each session, in the unit. */
export function cameraErrors(camera: TrueCamera, random: Random): number[] {
  if (camera.kind === "given") return [...camera.errors];
  const shared = new Map<string, number>();
  return camera.sds.map((sd, i) => {
    const label = camera.placements[i] ?? null;
    if (label === null) return sd * normal(random);
    const draw = shared.get(label) ?? normal(random);
    shared.set(label, draw);
    return sd * draw;
  });
}

/** A season of one track with its truth beside, determined by the plan and the stream. */
export function simulateSeason(plan: SeasonPlan, random: Random): SimulatedSession[] {
  const { noise } = plan;
  const draw = noise.tails === "t4" ? heavyTailed : normal;
  const effects = dayEffects(plan.days, noise, random);
  const errors = cameraErrors(plan.camera, random);
  return plan.days.map((day, i) => {
    const spread = noise.spreadChange !== null && i >= noise.spreadChange.from ? noise.spreadChange.factor : 1;
    const level = levelAt(plan.path, plan.positions?.[i] ?? i);
    const dayEffect = (effects[i] as number) * noise.daySd * spread;
    const cameraError = errors[i] as number;
    const odd = plan.oddSession?.at === i ? plan.oddSession.by : 0;
    const misread: number[] = [];
    const trueSwings: number[] = [];
    const swings = Array.from({ length: plan.swingCounts[i] as number }, (_, s) => {
      trueSwings.push(level + dayEffect + odd + noise.swingSd * spread * draw(random));
      let value = (trueSwings[s] as number) + cameraError + noise.readerSd * normal(random);
      if (random.uniform() < plan.misreading.share) {
        misread.push(s);
        value += (random.uniform() < 0.5 ? -1 : 1) * plan.misreading.size * noise.swingSd;
      }
      return roundTo(value, plan.rounding);
    });
    return { day, swings, truth: { level, dayEffect, cameraError, swings: trueSwings, misread } };
  });
}

/** Days of a season: the first on `firstDay`, then gaps of `shortest` to `longest` days, short ones likelier. */
export function unevenDays(
  firstDay: number,
  count: number,
  shortest: number,
  longest: number,
  random: Random,
): number[] {
  const days = [firstDay];
  while (days.length < count) {
    const share = random.uniform() ** 2;
    days.push((days.at(-1) as number) + shortest + Math.round(share * (longest - shortest)));
  }
  return days.slice(0, count);
}

/** Swings of each session: `fewest` to `most`, all alike. */
export function swingCounts(count: number, fewest: number, most: number, random: Random): number[] {
  return Array.from({ length: count }, () => whole(random, fewest, most));
}
