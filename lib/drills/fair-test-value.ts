import { dayNumber } from "@/lib/domain/calendar-day";
import type { Edges } from "@/lib/domain/fundamental";
import { FAIR_TEST_THRESHOLDS } from "./fair-test-thresholds";

/** A film of one fundamental: its day, whether it counts, and what its swings read. */
export interface FairFilm {
  readonly date: string;
  readonly use: boolean;
  readonly swings: readonly number[];
}

/** How much nearer to the band a student came. */
export type FairTestValue =
  | {
      readonly kind: "ok";
      readonly value: number;
      readonly before: number;
      readonly after: number;
      readonly films: number;
    }
  | { readonly kind: "no-start" | "no-film" };

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** How far a level lies from the band; inside: nothing. */
function distance(level: number, { low, high }: Edges): number {
  if (low !== null && level < low) return low - level;
  return high !== null && level > high ? level - high : 0;
}

/**
 * What a student gained in a test by the lot: how far the level lay from the goal band before the draw, less how far after.
 *
 * @param films in order of their days; those without use are passed over, as are those without a swing
 * @param goal the band of the day of the draw, in the unit of the swings
 * @param from the day of the draw; a film of that day is one of before, since the drill was given after it
 * @param days how many days after it count
 * @returns the gain in the unit, above 0: nearer. `before` is the mean of the last films up to the day, `after` that of the first
 *   ones behind it, as many as `FAIR_TEST_THRESHOLDS` says; each film counts once, however many swings it has. `no-start`: no
 *   film before; `no-film`: none after within the days. Since the drill was drawn, any such figure compares fairly.
 *   Source: own choice; the numbers of films are those of the comparison across students.
 */
export function fairTestValue(
  films: readonly FairFilm[],
  goal: Edges,
  { from, days }: { readonly from: string; readonly days: number },
): FairTestValue {
  const used = films.filter(({ use, swings }) => use && swings.length > 0);
  const start = used.filter(({ date }) => date <= from).slice(-FAIR_TEST_THRESHOLDS.baseFilms.value);
  if (start.length === 0) return { kind: "no-start" };
  const behind = used
    .filter(({ date }) => date > from && dayNumber(date) - dayNumber(from) <= days)
    .slice(0, FAIR_TEST_THRESHOLDS.postFilms.value);
  if (behind.length === 0) return { kind: "no-film" };
  const levelOf = (of: readonly FairFilm[]): number => mean(of.map(({ swings }) => mean(swings)));
  const [before, after] = [levelOf(start), levelOf(behind)];
  return { kind: "ok", value: distance(before, goal) - distance(after, goal), before, after, films: behind.length };
}
