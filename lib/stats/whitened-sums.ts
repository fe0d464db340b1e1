import type { CellSums, ShapeSums } from "./cell-sums";
import { cholesky } from "./cholesky";
import { covariance } from "./covariance";
import { dotProduct } from "./dot-product";
import type { LookData } from "./look-data";
import type { NuisanceCell } from "./nuisance-grid";
import { whiten } from "./whiten";

/**
 * Fills `sums` for one cell through the Cholesky factor of the whole covariance: any tie between groups.
 *
 * The inverse of the factor holds the whitened odd shapes as its columns; a step is the sum of the odd
 * shapes from its start on, and a ramp (before it is scaled) the sum of the steps that start after its own
 * start. So one factor whitens every column.
 */
export function whitenedSums(look: LookData, cell: NuisanceCell, sums: CellSums): void {
  const { count, values } = look;
  const factor = cholesky(covariance(look, cell), count);
  const whiteY = whiten(factor, values, count);
  const white1 = whiten(factor, new Float64Array(count).fill(1), count);
  let logDeterminant = 0;
  let oneOne = 0;
  let oneY = 0;
  let yy = 0;
  for (let i = 0; i < count; i++) {
    const vy = whiteY[i] as number;
    const v1 = white1[i] as number;
    logDeterminant += 2 * Math.log(factor[i * count + i] as number);
    oneOne += v1 * v1;
    oneY += v1 * vy;
    yy += vy * vy;
  }
  const start = look.start;
  if (start !== null) {
    oneOne += 1 / start.variance;
    oneY += start.mean / start.variance;
    yy += (start.mean * start.mean) / start.variance;
    logDeterminant += Math.log(start.variance);
  }
  sums.logDeterminant = logDeterminant;
  sums.oneOne = oneOne;
  sums.oneY = oneY;
  sums.yy = yy;

  const odd = new Float64Array(count);
  const step = new Float64Array(count);
  const ramp = new Float64Array(count);
  for (let k = count - 1; k >= 0; k--) {
    for (let i = k + 1; i < count; i++) ramp[i] = (ramp[i] as number) + (step[i] as number);
    for (let i = k; i < count; i++) {
      const row = i * count;
      const unit = i === k ? 1 : 0;
      const white = (unit - dotProduct(factor, row + k, odd, k, i - k)) / (factor[row + i] as number);
      odd[i] = white;
      step[i] = (step[i] as number) + white;
    }
    store(sums.odd, k, odd, whiteY, white1, 1);
    store(sums.step, k, step, whiteY, white1, 1);
    store(sums.ramp, k, ramp, whiteY, white1, k === count - 1 ? 0 : 1 / (count - 1 - k));
  }
}

function store(
  shape: ShapeSums,
  k: number,
  white: Float64Array,
  whiteY: Float64Array,
  white1: Float64Array,
  factor: number,
): void {
  const length = white.length - k;
  const xx = dotProduct(white, k, white, k, length);
  const xy = dotProduct(white, k, whiteY, k, length);
  const x1 = dotProduct(white, k, white1, k, length);
  shape.xx[k] = xx * factor * factor;
  shape.xy[k] = xy * factor;
  shape.x1[k] = x1 * factor;
}
