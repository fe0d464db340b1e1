import { evidenceOf, FIRST_LOOK } from "./evidence";
import { expectedDistance } from "./expected-distance";
import { latelyKnown, localSpread } from "./local-spread";
import type { Posterior } from "./look";
import { type LookData, lookData } from "./look-data";
import { misreadings } from "./misreadings";
import { mixtureCdf } from "./mixture-cdf";
import { mixtureEstimate } from "./mixture-quantile";
import type { NoiseModel } from "./noise-model";
import { type NormalMixture, normalMixture } from "./normal-mixture";
import { type Outcome, ok, tooFew } from "./outcome";
import { posteriorComponents } from "./posterior-components";
import { posteriorWeights } from "./posterior-weights";
import { readingStep } from "./reading-step";
import { relapseBelief } from "./relapse-belief";
import { replicateSd } from "./replicate-sd";
import type { Series } from "./series";
import { shareInBand } from "./share-in-band";
import { smallestSet } from "./smallest-set";
import { type MeasuredSpread, trueReplicateVariance } from "./true-replicate-variance";
import { unitVariance } from "./unit-variance";

/**
 * All that one look says: evidence, level, size and place of a change, spread, and questions about a band.
 *
 * `series`: the groups up to the look, in date order. `noise`: what was believed of day sd and correlation
 * before it. `first`: the number that the first group has in the answer. Everything is read off one mixture over nuisance
 * cells and shapes (see `posteriorComponents`) without random draws: the same input gives the same output. Estimates are
 * medians, in the unit. Claims about the change (sets, size, level before, ramps) rest on claimable shapes alone; `level`
 * and `probabilityWithin` also on steps that leave one group on a side, `level` and `share` on changes that came and went.
 * Too few: fewer than four used groups, counted in used groups. Throws on bad input with the offending value. Assumptions
 * as in `evidence`.
 */
export function posterior(series: Series, noise: NoiseModel, first = 0): Outcome<Posterior> {
  const look = lookData(series, noise);
  if (look.count < FIRST_LOOK) return tooFew(look.count, FIRST_LOOK);
  const parts = posteriorComponents(look);
  const weights = posteriorWeights(look, parts);
  const before = moved(normalMixture(weights.claimed, parts.beforeMeans, parts.beforeVariances), look.origin);
  const size = normalMixture(weights.claimed, parts.sizeMeans, parts.sizeVariances);
  const change = normalMixture(weights.changed, parts.sizeMeans, parts.sizeVariances);
  const daySds = look.cells.map((cell) => cell.daySd);
  const daySd = daySds.reduce((mean, sd, g) => mean + sd * (weights.cells[g] as number), 0);
  const stepTotal = weights.steps.reduce((sum, weight) => sum + weight, 0);
  const rampTotal = weights.ramps.reduce((sum, weight) => sum + weight, 0);
  const positionOf = (start: number): number => (look.positions[start] as number) + first;
  const inOrder = (set: readonly number[]): number[] => set.map(positionOf).sort((a, b) => a - b);
  // What few ask for, and then often.
  const cleaned = once(() => cleanedSpread(series, look, noise));
  const now = once(() => relapseBelief(look, parts));
  const level = once(() => moved(now().level, look.origin));
  const levelNow = once(() => mixtureEstimate(level()));
  return ok({
    ...evidenceOf(look, parts.gathered),
    unitSd: Math.sqrt(unitVariance(look, daySd)),
    daySd,
    replicateSd: look.replicateSd,
    get level() {
      return levelNow();
    },
    levelBefore: mixtureEstimate(before),
    size: mixtureEstimate(size),
    set80: inOrder(smallestSet(weights.steps, 0.8)),
    set95: inOrder(smallestSet(weights.steps, 0.95)),
    rampShare: rampTotal / (stepTotal + rampTotal),
    rampStart10: positionOf(firstReaching(weights.ramps, 0.1 * rampTotal)),
    probabilityWithin: (limit) =>
      limit > 0
        ? weights.noChange + (1 - weights.noChange) * (mixtureCdf(change, limit) - mixtureCdf(change, -limit))
        : 0,
    share: (band) => {
      const { spread, degreesOfFreedom, lately } = cleaned();
      const days = { values: daySds.map((sd) => sd * lately), weights: now().cells };
      return shareInBand(level(), days, widened(spread, lately), degreesOfFreedom, band);
    },
    expectedDistance: (at, band) => {
      const { spread, lately } = cleaned();
      const variance = (daySd * lately) ** 2 + trueReplicateVariance(widened(spread, lately), 1);
      return expectedDistance(at, Math.sqrt(variance), band);
    },
  });
}

/** An answer that is worked out when it is first asked for. */
function once<T>(work: () => T): () => T {
  let kept: { readonly value: T } | null = null;
  return () => {
    kept ??= { value: work() };
    return kept.value;
  };
}

/** Spread of the replicates lately. */
function widened(spread: MeasuredSpread, by: number): MeasuredSpread {
  return { ...spread, replicateSd: spread.replicateSd * by };
}

function moved(mixture: NormalMixture, by: number): NormalMixture {
  return { ...mixture, means: mixture.means.map((mean) => mean + by) };
}

function firstReaching(weights: Float64Array, target: number): number {
  let held = 0;
  const found = weights.findIndex((weight) => {
    held += weight;
    return weight > 0 && held >= target;
  });
  return Math.max(0, found);
}

interface CleanedSpread {
  readonly spread: MeasuredSpread;
  /** Spread of lately over that of the whole series. */
  readonly lately: number;
  readonly degreesOfFreedom: number;
}

/** Spread of the replicates once those that look misread are set aside. */
function cleanedSpread(series: Series, look: LookData, noise: NoiseModel): CleanedSpread {
  const aside = new Set(misreadings(series).map((at) => `${at.group}/${at.replicate}`));
  const kept = look.groups.map((group, i) =>
    group.values.filter((_, replicate) => !aside.has(`${look.positions[i]}/${replicate}`)),
  );
  const own = replicateSd(kept, series.readingErrorSd, noise.replicateSd);
  const step = readingStep(look.groups.flatMap((group) => group.values));
  return {
    spread: { replicateSd: own.sd, readingErrorSd: series.readingErrorSd, step },
    lately: noise.spread === "local" ? Math.sqrt(localSpread(kept, own.sd).at(-1) as number) : 1,
    degreesOfFreedom:
      noise.spread === "local" ? Math.min(own.degreesOfFreedom, latelyKnown(kept)) : own.degreesOfFreedom,
  };
}
