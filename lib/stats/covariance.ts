import type { LookData } from "./look-data";
import type { NuisanceCell } from "./nuisance-grid";

/**
 * Covariance of the group values of one look at one nuisance cell: n x n, row by row, in the unit squared.
 *
 * Entry (i, j): day effect daySd^2 correlation^|i-j|, by order of used groups; on the diagonal the known
 * variance of the group's value; and what ties between groups add (see `tieCovariance`).
 */
export function covariance(look: LookData, cell: NuisanceCell): Float64Array {
  const { count, variances, ties } = look;
  const matrix = ties === null ? new Float64Array(count * count) : ties.slice();
  const day = new Float64Array(count);
  for (let lag = 0, entry = cell.daySd * cell.daySd; lag < count; lag++, entry *= cell.correlation) day[lag] = entry;
  for (let i = 0; i < count; i++) {
    const row = i * count;
    for (let j = 0; j < count; j++)
      matrix[row + j] = (matrix[row + j] as number) + (day[i > j ? i - j : j - i] as number);
    matrix[row + i] = (matrix[row + i] as number) + (variances[i] as number);
  }
  return matrix;
}
