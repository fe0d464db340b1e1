import type { ReplicateGroup } from "./series";

/**
 * Covariance that shared draws add between groups: n x n, row by row, in the unit squared; null where none are shared.
 *
 * `groups`: the used groups of a look, in order. Two groups of one shared error label (null is no label) have one
 * draw of that error: the product of their sds between them; on the diagonal it is already part of each
 * group's known variance. Where offset labels differ anywhere (null is a label), groups of equal offset
 * label have one draw of the offset: `offsetSd`^2 between them and on the diagonal. One offset for all of
 * them would be part of the level.
 */
export function tieCovariance(groups: readonly ReplicateGroup[], offsetSd: number): Float64Array | null {
  const count = groups.length;
  const offsetsDiffer = groups.some((group) => group.offsetLabel !== groups[0]?.offsetLabel);
  const offset = offsetsDiffer ? offsetSd * offsetSd : 0;
  const ties = new Float64Array(count * count);
  let any = false;
  groups.forEach((a, i) => {
    groups.forEach((b, j) => {
      const sameDraw = i !== j && a.sharedErrorLabel !== null && a.sharedErrorLabel === b.sharedErrorLabel;
      const shared = sameDraw ? a.sharedErrorSd * b.sharedErrorSd : 0;
      const tie = shared + (a.offsetLabel === b.offsetLabel ? offset : 0);
      ties[i * count + j] = tie;
      if (tie !== 0) any = true;
    });
  });
  return any ? ties : null;
}
