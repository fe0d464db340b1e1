import type { CorrelationBelief, GroupCounts } from "./group-counts";
import { requireCounts } from "./require-counts";

/** How far the weights of a belief may sum from 1. */
const ROUNDING = 1e-9;

/**
 * Refuses groups of trials, or a belief about their correlation, that can't be one.
 *
 * `groups`: any number, in order; `belief`: see its fields. Returns nothing. Throws a RangeError with the offending value when a
 * group has no trial, counts aren't whole or successes outnumber trials, lists differ in length or are empty, a
 * correlation lies outside [0, 1), or weights are below 0 or don't sum to 1.
 */
export function requireGroupCounts(groups: readonly GroupCounts[], belief: CorrelationBelief): void {
  groups.forEach(({ successes, trials }, index) => {
    requireCounts(successes, trials);
    if (trials === 0) throw new RangeError(`groups[${index}] must hold at least one trial, got none`);
  });
  const { correlations, weights } = belief;
  if (correlations.length === 0 || weights.length !== correlations.length)
    throw new RangeError(`weights must have ${correlations.length} values, 1 or more, got ${weights.length}`);
  for (const one of correlations)
    if (!(one >= 0 && one < 1)) throw new RangeError(`a correlation must be in [0, 1), got ${one}`);
  for (const one of weights) if (!(one >= 0)) throw new RangeError(`a weight must be 0 or more, got ${one}`);
  const total = weights.reduce((sum, one) => sum + one, 0);
  if (!(Math.abs(total - 1) <= ROUNDING)) throw new RangeError(`the weights must sum to 1, got ${total}`);
}
