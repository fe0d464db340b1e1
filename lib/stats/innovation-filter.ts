import { type CellSums, fillLevelSums } from "./cell-sums";
import { stepCorrelations } from "./covariance";
import type { LookData } from "./look-data";
import type { NuisanceCell } from "./nuisance-grid";

/**
 * Fills `sums` for one cell by the scalar innovation filter: day effects correlated from group to group,
 * errors independent between groups (`look.ties` null, no persistence). Linear in the number of groups.
 *
 * Forward, the filter gives innovations of the values and of the ones column. A step, ramp or odd group
 * that begins at k is a nudge of the state (prediction, level, slope) at k, so that one backward pass of
 * 3-vectors r and a symmetric 3 x 3 matrix N holds the inner products of every shape at once.
 *
 * Equals `whitenedSums` to rounding wherever both apply. Source: de Jong & Penzer (1998), Diagnosing
 * shocks in time series, JASA 93.
 */
export function filteredSums(look: LookData, cell: NuisanceCell, sums: CellSums): void {
  const { count, values, variances, spread } = look;
  const steps = stepCorrelations(look, cell);
  const dayVariance = cell.daySd * cell.daySd;
  const { inverse, gain, innovationY, innovation1 } = sums.filter;
  let state = dayVariance;
  // Predictions of the day effect before it is scaled by the local spread.
  let predictY = 0;
  let predict1 = 0;
  let determinant = 1;
  let logDeterminant = 0;
  let oneOne = 0;
  let oneY = 0;
  let yy = 0;
  for (let i = 0; i < count; i++) {
    const scale = spread[i] as number;
    const phi = steps[i] as number;
    const total = scale * scale * state + (variances[i] as number);
    const f = 1 / total;
    const g = phi * scale * state * f;
    const vy = (values[i] as number) - scale * predictY;
    const v1 = 1 - scale * predict1;
    inverse[i] = f;
    gain[i] = g;
    innovationY[i] = vy;
    innovation1[i] = v1;
    predictY = phi * predictY + g * vy;
    predict1 = phi * predict1 + g * v1;
    oneOne += v1 * v1 * f;
    oneY += v1 * vy * f;
    yy += vy * vy * f;
    // The product is turned into a logarithm before it can leave the range of a double.
    determinant *= total;
    if (determinant < 1e-100 || determinant > 1e100) {
      logDeterminant += Math.log(determinant);
      determinant = 1;
    }
    state = phi * phi * state * (1 - scale * scale * state * f) + dayVariance * (1 - phi * phi);
  }
  logDeterminant += Math.log(determinant);
  fillLevelSums(sums, look.start, { logDeterminant, oneOne, oneY, yy });

  const { step, ramp, odd } = sums;
  // Entries of N for (p)rediction, (l)evel, (s)lope, and of r for the values (y) and the ones (1).
  let pp = 0;
  let pl = 0;
  let ps = 0;
  let ll = 0;
  let ls = 0;
  let ss = 0;
  let yp = 0;
  let yl = 0;
  let ys = 0;
  let op = 0;
  let ol = 0;
  let os = 0;
  for (let i = count - 1; i >= 0; i--) {
    const f = inverse[i] as number;
    const g = gain[i] as number;
    const scale = spread[i] as number;
    const keep = (steps[i] as number) - g * scale;
    const fs = f * scale;
    const fy = (innovationY[i] as number) * f;
    const f1 = (innovation1[i] as number) * f;
    odd.xx[i] = f + g * g * pp;
    odd.xy[i] = fy + g * yp;
    odd.x1[i] = f1 + g * op;
    ss = ll + 2 * ls + ss;
    ls = g * (pl + ps) + ll + ls;
    ll = g * g * pp + 2 * g * pl + ll + f;
    ps = keep * (pl + ps);
    pl = keep * (g * pp + pl) - fs;
    pp = keep * keep * pp + fs * scale;
    ys = yl + ys;
    yl = g * yp + yl + fy;
    yp = keep * yp - fy * scale;
    os = ol + os;
    ol = g * op + ol + f1;
    op = keep * op - f1 * scale;
    step.xx[i] = ll;
    step.xy[i] = yl;
    step.x1[i] = ol;
    const climb = i === count - 1 ? 0 : 1 / (count - 1 - i);
    ramp.xx[i] = ss * climb * climb;
    ramp.xy[i] = ys * climb;
    ramp.x1[i] = os * climb;
  }
}
