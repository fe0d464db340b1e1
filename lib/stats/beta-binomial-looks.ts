import { type CorrelationBelief, type GroupCounts, WEAK_CORRELATION } from "./group-counts";
import { type Outcome, ok, tooFew } from "./outcome";
import { requireGroupCounts } from "./require-group-counts";
import { shareGrid } from "./share-grid";
import type { ShareSide } from "./share-side";
import { shareSums } from "./share-sums";
import { LEAST_SIDE, stepPlaces } from "./step-places";

/** What speaks for one step in the share after some groups. */
export interface ShareEvidence {
  /** Natural log of the chance of the counts with a step over that with one constant share. */
  readonly logBayesFactor: number;
  /** Given a step: belief that the share went up, 0 to 1. */
  readonly upChance: number;
}

/**
 * Evidence for a step in the share at every look: entry i is what `betaBinomialStep` says of groups 0 to i.
 *
 * `groups`, `belief`: as `betaBinomialStep`. A look sees nothing later than itself; before the fourth group: too-few. Bad
 * input throws a RangeError. All looks of forty groups cost some tens of milliseconds.
 *
 * Source: as `betaBinomialStep`; own construction of the looks from running sums.
 */
export function betaBinomialLooks(
  groups: readonly GroupCounts[],
  belief: CorrelationBelief = WEAK_CORRELATION,
): Outcome<ShareEvidence>[] {
  requireGroupCounts(groups, belief);
  const grid = shareGrid(groups, belief);
  const sums = belief.correlations.map((_, r) => shareSums(grid, r));
  const befores = new Map<string, ShareSide>();
  return groups.map((_, at) => {
    const count = at + 1;
    if (count < 2 * LEAST_SIDE) return tooFew(count, 2 * LEAST_SIDE);
    const { steps, logSteps, logBayesFactor } = stepPlaces(sums, belief, count, befores);
    const upChance = steps.reduce((sum, one) => sum + Math.exp(one.log - logSteps) * one.up, 0);
    return ok({ logBayesFactor, upChance });
  });
}
