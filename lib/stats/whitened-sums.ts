import { type CellSums, fillLevelSums } from "./cell-sums";
import { cholesky } from "./cholesky";
import { covariance } from "./covariance";
import { inverseFactor } from "./inverse-factor";
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
  fillLevelSums(sums, look.start, { logDeterminant, oneOne, oneY, yy });

  const { step, ramp, odd } = sums;
  for (const shape of [step, ramp, odd]) for (const column of [shape.xx, shape.x1, shape.xy]) column.fill(0);
  // Row i of the factor's inverse, up to entry i: every odd shape's whitened column at group i.
  const inverse = inverseFactor(factor, count);
  for (let i = 0; i < count; i++) {
    const row = i * count;
    const vy = whiteY[i] as number;
    const v1 = white1[i] as number;
    let stepped = 0;
    let climbed = 0;
    for (let k = i; k >= 0; k--) {
      const at = inverse[row + k] as number;
      climbed += stepped;
      stepped += at;
      odd.xx[k] = (odd.xx[k] as number) + at * at;
      odd.xy[k] = (odd.xy[k] as number) + at * vy;
      odd.x1[k] = (odd.x1[k] as number) + at * v1;
      step.xx[k] = (step.xx[k] as number) + stepped * stepped;
      ramp.xx[k] = (ramp.xx[k] as number) + climbed * climbed;
    }
  }
  sumFromEnd(odd.xy, step.xy, ramp.xy);
  sumFromEnd(odd.x1, step.x1, ramp.x1);
  for (let k = 0; k < count; k++) {
    const climb = k === count - 1 ? 0 : 1 / (count - 1 - k);
    ramp.xx[k] = (ramp.xx[k] as number) * climb * climb;
    ramp.xy[k] = (ramp.xy[k] as number) * climb;
    ramp.x1[k] = (ramp.x1[k] as number) * climb;
  }
}

/** Products with a fixed column are sums like the shapes themselves. */
function sumFromEnd(odd: Float64Array, step: Float64Array, ramp: Float64Array): void {
  let stepped = 0;
  let climbed = 0;
  for (let k = odd.length - 1; k >= 0; k--) {
    climbed += stepped;
    stepped += odd[k] as number;
    step[k] = stepped;
    ramp[k] = climbed;
  }
}
