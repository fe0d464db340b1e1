import type { LookData } from "./look-data";
import { normalAboveZero } from "./normal-above-zero";
import { type NormalMixture, normalMixture } from "./normal-mixture";
import type { PosteriorComponents } from "./posterior-components";
import type { PosteriorWeights } from "./posterior-weights";

/** What is believed of a look given that a lasting change one way, of some size at least, has happened. */
export interface OneWayChange {
  /** Share of the belief in lasting changes that is kept, 0 to 1. */
  readonly share: number;
  /** Mean size, above 0 for up and below 0 for down, in the unit. */
  readonly size: number;
  /** Level at the last group, in the unit. */
  readonly level: NormalMixture;
  /** Mean day sd, in the unit. */
  readonly daySd: number;
}

/**
 * The belief of a look narrowed to lasting changes of one direction and of some size at least.
 *
 * `look`, `parts`, `weights`: of one look of at least four used groups. `least`: smallest size kept, 0 or more, in the
 * unit, whichever the direction. Every step and ramp keeps the part of its belief whose size is kept; level and size go together, so the level moves with the part of the
 * sizes that is kept. Each narrowed component is taken as normal with its exact mean and variance. Null where no
 * component has weight there. Throws on a negative `least`.
 *
 * Source: moments of truncated normals as in `normalAboveZero`; conditioning within a mixture is Bayes' rule.
 */
export function oneWayChange(
  look: LookData,
  parts: PosteriorComponents,
  weights: PosteriorWeights,
  direction: "up" | "down",
  least: number,
): OneWayChange | null {
  if (!(least >= 0)) throw new RangeError(`a least size must be 0 or more: ${least}`);
  const sign = direction === "up" ? 1 : -1;
  const { length } = weights.changed;
  const kept = new Float64Array(length);
  const means = new Float64Array(length);
  const variances = new Float64Array(length).fill(1);
  let [all, total, size, daySd] = [0, 0, 0, 0];
  for (let i = 0; i < length; i++) {
    const weight = weights.changed[i] as number;
    if (weight === 0) continue;
    all += weight;
    const sizeMean = parts.sizeMeans[i] as number;
    const sizeVariance = parts.sizeVariances[i] as number;
    const part = normalAboveZero(sign * sizeMean - least, Math.sqrt(sizeVariance));
    const partMean = part.mean + least;
    const left = weight * part.probability;
    const levelVariance = parts.levelVariances[i] as number;
    // Level after less level before is the size, which gives how far the level moves with it.
    const pull = ((levelVariance - (parts.beforeVariances[i] as number)) / sizeVariance + 1) / 2;
    kept[i] = left;
    means[i] = (parts.levelMeans[i] as number) + pull * (sign * partMean - sizeMean) + look.origin;
    variances[i] = levelVariance + pull * pull * (part.variance - sizeVariance);
    total += left;
    size += left * partMean;
    daySd += left * (look.cells[Math.floor(i / parts.stride)] as { daySd: number }).daySd;
  }
  if (!(total > 0)) return null;
  return {
    share: total / all,
    size: (sign * size) / total,
    level: normalMixture(kept, means, variances),
    daySd: daySd / total,
  };
}
