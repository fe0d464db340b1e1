import type { emptyCellSums } from "@/lib/stats/cell-sums";
import { cholesky } from "@/lib/stats/cholesky";
import { covariance } from "@/lib/stats/covariance";
import { dotProduct } from "@/lib/stats/dot-product";
import type { LookData } from "@/lib/stats/look-data";
import type { NuisanceCell } from "@/lib/stats/nuisance-grid";
import { oddColumn, rampColumn, stepColumn } from "@/lib/stats/shapes";
import { whiten } from "@/lib/stats/whiten";

/** Every number of some sums, in one row. */
export const flat = (sums: ReturnType<typeof emptyCellSums>): number[] => [
  sums.logDeterminant,
  sums.oneOne,
  sums.oneY,
  sums.yy,
  ...[sums.step, sums.ramp, sums.odd].flatMap((shape) => [...shape.xx, ...shape.x1, ...shape.xy]),
];

/** Every inner product from its definition: each column whitened on its own. */
export function definition(look: LookData, cell: NuisanceCell): number[] {
  const n = look.count;
  const factor = cholesky(covariance(look, cell), n);
  const white = (column: ArrayLike<number>): Float64Array => whiten(factor, column, n);
  const dot = (a: Float64Array, b: Float64Array): number => dotProduct(a, 0, b, 0, n);
  const y = white(look.values);
  const one = white(new Float64Array(n).fill(1));
  let logDeterminant = 0;
  for (let i = 0; i < n; i++) logDeterminant += 2 * Math.log(factor[i * n + i] as number);
  const out = [logDeterminant, dot(one, one), dot(one, y), dot(y, y)];
  for (const column of [stepColumn, rampColumn, oddColumn]) {
    const columns = Array.from({ length: n }, (_, k) =>
      white(column === rampColumn && k === n - 1 ? new Float64Array(n) : column(n, k)),
    );
    out.push(...columns.map((x) => dot(x, x)), ...columns.map((x) => dot(x, one)), ...columns.map((x) => dot(x, y)));
  }
  return out;
}
