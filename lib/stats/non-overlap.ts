import { type Outcome, ok, tooFew } from "./outcome";
import { requireFinite } from "./require-finite";

/** How far two phases of a series don't overlap. */
export interface NonOverlap {
  /** Share of pairs, one of each phase, in which the second is higher; ties count half. 0 to 1, .5: no difference. */
  readonly pairs: number;
  /** Pairs higher less pairs lower over all pairs, -1 to 1. */
  readonly tau: number;
  /** The same after taking out the first phase's own rise, pair for pair; may leave -1 to 1. */
  readonly tauWithoutTrend: number;
}

/**
 * Non-overlap of all pairs, Kendall's tau of the phases, and Tau-U with the first phase's trend taken out.
 *
 * `first`, `second`: values of the phases in time order, any unit; more is better. An empty phase: too-few, counting its
 * values. Bad input: NaN or infinity throws a RangeError. Describes the values; it says nothing of what came back by itself.
 *
 * Source: Parker, R.I., Vannest, K.J., Davis, J.L. & Sauber, S.B. (2011), Behavior Therapy 42, 284-299; Parker, R.I. &
 * Vannest, K.J. (2009), Behavior Therapy 40, 357-367.
 */
export function nonOverlap(first: readonly number[], second: readonly number[]): Outcome<NonOverlap> {
  requireFinite(first, "first");
  requireFinite(second, "second");
  const fewest = Math.min(first.length, second.length);
  if (fewest === 0) return tooFew(fewest, 1);
  const all = first.length * second.length;
  const signs = (from: readonly number[], to: (at: number) => readonly number[]) =>
    from.reduce((sum, value, at) => to(at).reduce((inner, other) => inner + Math.sign(other - value), sum), 0);
  const between = signs(first, () => second);
  const within = signs(first, (at) => first.slice(at + 1));
  return ok({ pairs: (between / all + 1) / 2, tau: between / all, tauWithoutTrend: (between - within) / all });
}
