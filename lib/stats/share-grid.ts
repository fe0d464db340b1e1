import { betaBinomialLogChance } from "./beta-binomial-chance";
import type { CorrelationBelief, GroupCounts } from "./group-counts";

/** Shares on a grid: enough that ends of intervals of a thousand trials are right to four decimals. */
const CELLS = 256;

/** What groups of trials say at every share and correlation of a grid. */
export interface ShareGrid {
  /** Middles of the cells, even in the angle t of share = (1 - cos t) / 2, ascending. */
  readonly shares: Float64Array;
  /** Mass of each cell when every share is equally believed; sums to 1. */
  readonly masses: Float64Array;
  /** Entry [r][g]: log chance of group g at correlation r, one value a share. */
  readonly logs: readonly (readonly Float64Array[])[];
}

/**
 * Log chances of each group's counts over a grid of shares and the correlations of a belief.
 *
 * `groups`: in order, already checked (`requireGroupCounts`); `belief`: its correlations give the first index of `logs`.
 * Groups of equal counts share one list. Cells are narrow near 0 and 1, where a share is known best. Assumes that each
 * group's own chance is drawn from a beta distribution.
 *
 * Source: quadrature by midpoints in the angle; Davis, P.J. & Rabinowitz, P. (1984), Methods of Numerical Integration, 2.9.
 */
export function shareGrid(groups: readonly GroupCounts[], belief: CorrelationBelief): ShareGrid {
  const step = Math.PI / CELLS;
  const shares = Float64Array.from({ length: CELLS }, (_, j) => Math.sin(((j + 0.5) * step) / 2) ** 2);
  const masses = Float64Array.from({ length: CELLS }, (_, j) => Math.sin(step / 2) * Math.sin((j + 0.5) * step));
  const logs = belief.correlations.map((correlation) => {
    const known = new Map<string, Float64Array>();
    return groups.map(({ successes, trials }) => {
      const name = `${successes} of ${trials}`;
      const before = known.get(name);
      if (before) return before;
      const list = shares.map((share) => betaBinomialLogChance(successes, trials, share, correlation));
      known.set(name, list);
      return list;
    });
  });
  return { shares, masses, logs };
}
