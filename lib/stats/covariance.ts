import type { LookData } from "./look-data";
import type { NuisanceCell } from "./nuisance-grid";

/**
 * Covariance of the group values of one look at one nuisance cell: n x n, row by row, in the unit squared.
 *
 * Entry (i, j): day effect daySd^2 correlation^|i-j|, by order of used groups; on the diagonal the known
 * variance of the group's value; where two groups carry the same shared error label, the product of
 * their shared error sds (one draw for both); where offset labels differ anywhere, offsetSd^2 for groups
 * of equal offset label, the diagonal included (one draw a label).
 */
export function covariance(look: LookData, cell: NuisanceCell): Float64Array {
  const { count, groups, variances } = look;
  const matrix = new Float64Array(count * count);
  const dayVariance = cell.daySd * cell.daySd;
  const offset = look.offsetSd * look.offsetSd;
  for (let i = 0; i < count; i++) {
    const a = groups[i];
    if (a === undefined) continue;
    let day = dayVariance;
    for (let j = i; j >= 0; j--) {
      const b = groups[j];
      if (b === undefined) continue;
      let entry = day;
      day *= cell.correlation;
      if (i === j) entry += variances[i] as number;
      else if (a.sharedErrorLabel !== null && a.sharedErrorLabel === b.sharedErrorLabel)
        entry += a.sharedErrorSd * b.sharedErrorSd;
      if (offset > 0 && a.offsetLabel === b.offsetLabel) entry += offset;
      matrix[i * count + j] = entry;
      matrix[j * count + i] = entry;
    }
  }
  return matrix;
}
