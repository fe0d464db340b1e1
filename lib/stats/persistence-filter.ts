import { type CellSums, fillLevelSums } from "./cell-sums";
import { stepCorrelations } from "./covariance";
import type { LookData } from "./look-data";
import type { NuisanceCell } from "./nuisance-grid";

/**
 * Fills `sums` for one cell by the innovation filter of two states: the day effect, and the shared error of groups
 * without a label, which persists from group to group (`look.ties` null). Linear in the number of groups.
 *
 * As in `filteredSums`, a shape that begins at k is a nudge of the state at k, here of the vector (day, error, level,
 * slope); one backward pass of a vector r and a symmetric 4 x 4 matrix N holds the inner products of every shape.
 *
 * Equals `whitenedSums` to rounding wherever both apply. Source: de Jong & Penzer (1998), Diagnosing shocks in time
 * series, JASA 93.
 */
export function persistentSums(look: LookData, cell: NuisanceCell, sums: CellSums): void {
  const { count, values, variances, spread, unlabelled } = look;
  const steps = stepCorrelations(look, cell);
  const kappa = cell.errorPersistence;
  const dayVariance = cell.daySd * cell.daySd;
  const { inverse, gain, gainError, innovationY, innovation1 } = sums.filter;
  // State covariance (d)ay and (e)rror in its own sd, and their predictions for the values and the ones.
  let dd = dayVariance;
  let de = 0;
  let ee = 1;
  let dayY = 0;
  let errorY = 0;
  let day1 = 0;
  let error1 = 0;
  let determinant = 1;
  let logDeterminant = 0;
  let oneOne = 0;
  let oneY = 0;
  let yy = 0;
  for (let i = 0; i < count; i++) {
    const zd = spread[i] as number;
    const ze = unlabelled[i] as number;
    const phi = steps[i] as number;
    const toDay = dd * zd + de * ze;
    const toError = de * zd + ee * ze;
    const total = zd * toDay + ze * toError + (variances[i] as number) - ze * ze;
    const f = 1 / total;
    const gd = phi * toDay * f;
    const ge = kappa * toError * f;
    const vy = (values[i] as number) - zd * dayY - ze * errorY;
    const v1 = 1 - zd * day1 - ze * error1;
    inverse[i] = f;
    gain[i] = gd;
    gainError[i] = ge;
    innovationY[i] = vy;
    innovation1[i] = v1;
    dayY = phi * dayY + gd * vy;
    errorY = kappa * errorY + ge * vy;
    day1 = phi * day1 + gd * v1;
    error1 = kappa * error1 + ge * v1;
    oneOne += v1 * v1 * f;
    oneY += v1 * vy * f;
    yy += vy * vy * f;
    // The product is turned into a logarithm before it can leave the range of a double.
    determinant *= total;
    if (determinant < 1e-100 || determinant > 1e100) {
      logDeterminant += Math.log(determinant);
      determinant = 1;
    }
    dd = phi * phi * (dd - toDay * toDay * f) + dayVariance * (1 - phi * phi);
    de = phi * kappa * (de - toDay * toError * f);
    ee = kappa * kappa * (ee - toError * toError * f) + 1 - kappa * kappa;
  }
  logDeterminant += Math.log(determinant);
  fillLevelSums(sums, look.start, { logDeterminant, oneOne, oneY, yy });
  backward(look, steps, kappa, sums);
}

/** The backward pass; entries of N and r by (d)ay, (e)rror, (l)evel, (s)lope, r for the values (y) and the ones (1). */
function backward(look: LookData, steps: Float64Array, kappa: number, sums: CellSums): void {
  const { count, spread, unlabelled } = look;
  const { inverse, gain, gainError, innovationY, innovation1 } = sums.filter;
  const { step, ramp, odd } = sums;
  let [dd, de, dl, ds, ee, el, es, ll, ls, ss] = [0, 0, 0, 0, 0, 0, 0, 0, 0, 0];
  let [yd, ye, yl, ys] = [0, 0, 0, 0];
  let [od, oe, ol, os] = [0, 0, 0, 0];
  for (let i = count - 1; i >= 0; i--) {
    const zd = spread[i] as number;
    const ze = unlabelled[i] as number;
    const f = inverse[i] as number;
    const gd = gain[i] as number;
    const ge = gainError[i] as number;
    const fy = (innovationY[i] as number) * f;
    const f1 = (innovation1[i] as number) * f;
    // N times the gain: what a nudge of the value at i does from i + 1 on.
    const nd = dd * gd + de * ge;
    const ne = de * gd + ee * ge;
    const held = gd * nd + ge * ne;
    odd.xx[i] = f + held;
    odd.xy[i] = fy + gd * yd + ge * ye;
    odd.x1[i] = f1 + gd * od + ge * oe;
    // A nudge of the day effect moves on as phi less what the filter takes of it: (phi - gd zd, -ge zd); of the error alike.
    const dayToDay = (steps[i] as number) - gd * zd;
    const dayToError = -ge * zd;
    const errorToDay = -gd * ze;
    const errorToError = kappa - ge * ze;
    const levelSlope = gd * ds + ge * es + ls;
    const levelLevel = held + 2 * (gd * dl + ge * el) + ll;
    const dayDay = dayToDay * dd + dayToError * de;
    const dayError = dayToDay * de + dayToError * ee;
    const errorDay = errorToDay * dd + errorToError * de;
    const errorError = errorToDay * de + errorToError * ee;
    const dayLevel = dayDay * gd + dayError * ge + dayToDay * dl + dayToError * el;
    const errorLevel = errorDay * gd + errorError * ge + errorToDay * dl + errorToError * el;
    const daySlope = dayToDay * (dl + ds) + dayToError * (el + es);
    const errorSlope = errorToDay * (dl + ds) + errorToError * (el + es);
    ss = ll + 2 * ls + ss;
    ls = levelSlope + gd * dl + ge * el + ll;
    ll = levelLevel + f;
    ds = daySlope;
    es = errorSlope;
    dl = dayLevel - f * zd;
    el = errorLevel - f * ze;
    const newDd = dayDay * dayToDay + dayError * dayToError + f * zd * zd;
    const newDe = dayDay * errorToDay + dayError * errorToError + f * zd * ze;
    ee = errorDay * errorToDay + errorError * errorToError + f * ze * ze;
    dd = newDd;
    de = newDe;
    ys = yl + ys;
    yl = gd * yd + ge * ye + yl + fy;
    const newYd = dayToDay * yd + dayToError * ye - fy * zd;
    ye = errorToDay * yd + errorToError * ye - fy * ze;
    yd = newYd;
    os = ol + os;
    ol = gd * od + ge * oe + ol + f1;
    const newOd = dayToDay * od + dayToError * oe - f1 * zd;
    oe = errorToDay * od + errorToError * oe - f1 * ze;
    od = newOd;
    step.xx[i] = ll;
    step.xy[i] = yl;
    step.x1[i] = ol;
    const climb = i === count - 1 ? 0 : 1 / (count - 1 - i);
    ramp.xx[i] = ss * climb * climb;
    ramp.xy[i] = ys * climb;
    ramp.x1[i] = os * climb;
  }
}
