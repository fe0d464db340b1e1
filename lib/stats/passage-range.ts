import type { FirstPassage } from "./first-passage";
import { requirePositive } from "./require-positive";
import { requireProbability } from "./require-probability";

/** A stretch of days after the last group. */
export interface DayRange {
  readonly from: number;
  readonly to: number;
}

/** Days between points at which a passage is asked; between them its probability is taken for straight. */
const STEP = 3.5;

/**
 * The stretch of days, from now to a horizon, that holds a first passage with a probability.
 *
 * Of the chance up to the horizon that needn't be held, half lies before the stretch and half after it: the shortest stretch
 * would begin now and nearly all of its misses would come later. `passage`: asked at half weeks; `held`: the probability to be
 * held, between 0 and 1; `horizon`: in days, above 0. Days are counted from the last group and may be parts of one. Null: up
 * to the horizon there isn't that much; what is reached before now doesn't count. Throws a RangeError on a probability
 * outside (0, 1) or a horizon that isn't above 0.
 */
export function passageRange(passage: FirstPassage, held: number, horizon: number): DayRange | null {
  requireProbability(held, "held");
  requirePositive(horizon, "horizon");
  const count = Math.ceil(horizon / STEP);
  const days = Array.from({ length: count + 1 }, (_, i) => (horizon * i) / count);
  const reached = days.map((day) => passage.reachedBy(day));
  const [first, last] = [reached[0] as number, reached[count] as number];
  const spare = last - first - held;
  if (spare < 0) return null;
  const low = first + spare / 2;
  return { from: dayOf(low, days, reached), to: dayOf(low + held, days, reached) };
}

/** The day by which a probability is reached; at most the last of `days`. */
function dayOf(probability: number, days: readonly number[], reached: readonly number[]): number {
  const after = reached.findIndex((value) => value >= probability);
  if (after === 0) return days[0] as number;
  if (after < 0) return days.at(-1) as number;
  const [low, high] = [reached[after - 1] as number, reached[after] as number];
  const [from, to] = [days[after - 1] as number, days[after] as number];
  return from + ((probability - low) / (high - low)) * (to - from);
}
