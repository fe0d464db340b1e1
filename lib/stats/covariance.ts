import type { LookData } from "./look-data";
import type { NuisanceCell } from "./nuisance-grid";

/**
 * Correlation of the day effect from each group to the next, one entry a group; the last is 0.
 *
 * Fading by groups it is the cell's correlation throughout, fading by days that correlation to the power of the days
 * between over ten.
 */
export function stepCorrelations(look: LookData, cell: NuisanceCell): Float64Array {
  const steps = new Float64Array(look.count);
  for (let i = 0; i < look.count - 1; i++)
    steps[i] = cell.fadesBy === "days" ? cell.correlation ** (look.tensOfDays[i] as number) : cell.correlation;
  return steps;
}

/**
 * Covariance of the group values of one look at one nuisance cell: n x n, row by row, in the unit squared.
 *
 * Entry (i, j): day effect daySd^2 s_i s_j R_ij, with s the local spread and R the correlation from group to group
 * (see `stepCorrelations`); between groups that name no label, the product of their shared error sds times
 * errorPersistence^|i-j|; on the diagonal the known variance of the group's value; and what ties between groups add
 * (see `tieCovariance`).
 */
export function covariance(look: LookData, cell: NuisanceCell): Float64Array {
  const { count, variances, ties, spread, unlabelled } = look;
  const matrix = ties === null ? new Float64Array(count * count) : ties.slice();
  const dayVariance = cell.daySd * cell.daySd;
  const steps = stepCorrelations(look, cell);
  const add = (i: number, j: number, entry: number): void => {
    matrix[i * count + j] = (matrix[i * count + j] as number) + entry;
  };
  for (let i = 0; i < count; i++) {
    const si = spread[i] as number;
    const error = unlabelled[i] as number;
    add(i, i, dayVariance * si * si + (variances[i] as number));
    let correlation = 1;
    let persistence = 1;
    for (let j = i + 1; j < count; j++) {
      correlation *= steps[j - 1] as number;
      persistence *= cell.errorPersistence;
      const entry =
        dayVariance * si * (spread[j] as number) * correlation + error * (unlabelled[j] as number) * persistence;
      add(i, j, entry);
      add(j, i, entry);
    }
  }
  return matrix;
}
