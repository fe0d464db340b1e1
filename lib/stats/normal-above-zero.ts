import { normalCdf } from "./normal-distribution";

/** Beyond so many sds below 0 the exact formula loses its digits; the tail is as good as exponential. */
const FAR = -25;

/** The part of a normal distribution that lies above 0. */
export interface AboveZero {
  /** Share of the distribution above 0, 0 to 1. */
  readonly probability: number;
  /** Mean and variance of that part alone. */
  readonly mean: number;
  readonly variance: number;
}

/**
 * Share, mean and variance of the part of a normal distribution above 0.
 *
 * `mean`, `sd` (above 0): of the whole distribution, in one unit. The variance is in its square. Far below 0,
 * where next to nothing is left, the part is taken as exponential. Throws a RangeError on a mean that is not a
 * number or an sd that is not above 0.
 *
 * Source: Johnson, N.L., Kotz, S. & Balakrishnan, N. (1994), Continuous univariate distributions 1, chapter 13.10.1.
 */
export function normalAboveZero(mean: number, sd: number): AboveZero {
  if (!(Number.isFinite(mean) && sd > 0 && Number.isFinite(sd)))
    throw new RangeError(`a normal distribution needs a mean and an sd above 0: ${mean}, ${sd}`);
  const z = mean / sd;
  const probability = normalCdf(z);
  if (z < FAR) return { probability, mean: -sd / z, variance: (sd / z) ** 2 };
  const hazard = Math.exp(-0.5 * z * z) / (Math.sqrt(2 * Math.PI) * probability);
  return { probability, mean: mean + sd * hazard, variance: sd * sd * (1 - hazard * (hazard + z)) };
}
