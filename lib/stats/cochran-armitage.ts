import { normalUpperTail } from "./normal-distribution";
import { type Outcome, ok, tooFew } from "./outcome";
import { requireCounts } from "./require-counts";
import { requireFinite } from "./require-finite";

/** Whether a share goes up or down across ordered groups. */
export interface ProportionTrend {
  /** Above 0 when the share rises with the score; its square is chi-square with one degree of freedom. */
  readonly z: number;
  /** Two-sided, from z: rough where the rarer outcome was counted only a few times. */
  readonly p: number;
}

/** Successes out of trials of one group, and its place on the ordered scale (no unit). */
export interface ScoredCount {
  readonly successes: number;
  readonly trials: number;
  readonly score: number;
}

/**
 * Cochran-Armitage test of a trend in shares across ordered groups, without continuity correction.
 *
 * `groups`: any order; counts whole, successes not above trials; a group without trials adds nothing. Fewer than two different
 * scores with trials: too-few, counting those. All trials of one outcome: too-few, counting outcomes seen (1 of 2). Bad
 * input: counts that can't be, or a score that isn't finite, throws a RangeError. Assumes independent trials.
 *
 * Source: Armitage, P. (1955), Biometrics 11, 375-386; Cochran, W.G. (1954), Biometrics 10, 417-451.
 */
export function cochranArmitage(groups: readonly ScoredCount[]): Outcome<ProportionTrend> {
  requireFinite(
    groups.map((group) => group.score),
    "scores",
  );
  for (const { successes, trials } of groups) requireCounts(successes, trials);
  const seen = groups.filter((group) => group.trials > 0);
  const different = new Set(seen.map((group) => group.score)).size;
  if (different < 2) return tooFew(different, 2);
  const total = (term: (group: ScoredCount) => number) => seen.reduce((sum, group) => sum + term(group), 0);
  const trials = total((group) => group.trials);
  const successes = total((group) => group.successes);
  if (successes === 0 || successes === trials) return tooFew(1, 2);
  const share = successes / trials;
  const centre = total((group) => group.trials * group.score) / trials;
  const slope = total((group) => (group.score - centre) * (group.successes - group.trials * share));
  const spread = total((group) => group.trials * (group.score - centre) ** 2);
  const z = slope / Math.sqrt(share * (1 - share) * spread);
  return ok({ z, p: 2 * normalUpperTail(Math.abs(z)) });
}
