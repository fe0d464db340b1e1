import { type CorrelationBelief, type GroupCounts, WEAK_CORRELATION } from "./group-counts";
import { logSum } from "./log-sum";
import { type Outcome, ok, tooFew } from "./outcome";
import { requireGroupCounts } from "./require-group-counts";
import { shareGrid } from "./share-grid";
import { type ShareSummary, shareSummary } from "./share-summary";

/** Belief about the share behind groups of trials. */
export interface BetaBinomial {
  /** Of successes in the long run, over groups still to come. */
  readonly share: ShareSummary;
  /** Mean belief about the correlation between two trials of one group, 0 to below 1. */
  readonly correlation: number;
  /** Natural log of the chance of all the counts. */
  readonly logEvidence: number;
}

/**
 * The share of successes behind groups of trials, when trials of one group are alike: five of five on one occasion say less
 * than one of one on five.
 *
 * `groups`: successes and trials of each, any order; `belief`: about the correlation in a group, a weak one by default. Each
 * share is equally believed beforehand; correlation and share are integrated on a grid, so that equal counts always give
 * equal answers; ends are right to four decimals up to some thousand trials. No group: too-few, counting groups. Bad input: as `requireGroupCounts`, a RangeError. Assumes groups
 * that are independent of each other, with chances of their own drawn from one beta distribution.
 *
 * Source: Griffiths, D.A. (1973), Biometrics 29, 637-648 (model); Lee, J.C. & Sabavala, D.J. (1987), Journal of Business and
 * Economic Statistics 5, 357-367 (its Bayesian form by numerical integration).
 */
export function betaBinomial(
  groups: readonly GroupCounts[],
  belief: CorrelationBelief = WEAK_CORRELATION,
): Outcome<BetaBinomial> {
  requireGroupCounts(groups, belief);
  if (groups.length === 0) return tooFew(0, 1);
  const { shares, masses, logs } = shareGrid(groups, belief);
  const cells = logs.map((lists, r) =>
    Array.from(shares, (_, j) =>
      lists.reduce((sum, list) => sum + (list[j] as number), Math.log((masses[j] as number) * at(belief.weights, r))),
    ),
  );
  const byCorrelation = cells.map(logSum);
  const logEvidence = logSum(byCorrelation);
  const weights = Array.from(shares, (_, j) =>
    cells.reduce((sum, list) => sum + Math.exp((list[j] as number) - logEvidence), 0),
  );
  return ok({
    share: shareSummary(weights),
    correlation: byCorrelation.reduce(
      (sum, log, r) => sum + Math.exp(log - logEvidence) * at(belief.correlations, r),
      0,
    ),
    logEvidence,
  });
}

function at(list: readonly number[], index: number): number {
  return list[index] as number;
}
