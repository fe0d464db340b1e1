import { cholesky } from "@/lib/stats/cholesky";
import { covariance } from "@/lib/stats/covariance";
import type { LookData } from "@/lib/stats/look-data";
import type { NuisanceCell } from "@/lib/stats/nuisance-grid";
import { oddColumn, rampColumn, stepColumn } from "@/lib/stats/shapes";
import { whiten } from "@/lib/stats/whiten";

/** Step of the grid that stands in for the integrals, in the unit. */
export const STEP = 0.15;

/** One point of the grid with its weight of belief. */
export interface GridPoint {
  readonly weight: number;
  readonly level: number;
  readonly before: number;
  readonly size: number;
  readonly kind: "still" | "step" | "alone" | "ramp";
}

/** Belief on a fine grid of (level before, size) for every shape and cell, by nothing but the normal density. */
export function gridPoints(look: LookData): GridPoint[] {
  const n = look.count;
  const points: GridPoint[] = [];
  const add = (
    cell: NuisanceCell,
    column: Float64Array | null,
    prior: number,
    spread: number,
    kind: GridPoint["kind"],
  ) => {
    const factor = cholesky(covariance(look, cell), n);
    let log = 0;
    for (let i = 0; i < n; i++) log -= Math.log(factor[i * n + i] as number);
    const y = whiten(factor, look.values, n);
    const one = whiten(factor, new Float64Array(n).fill(1), n);
    const x = whiten(factor, column ?? new Float64Array(n), n);
    const sizes = column === null ? [0] : Array.from({ length: 241 }, (_, i) => (i - 120) * STEP);
    const step = column === null ? 1 : STEP;
    for (const size of sizes)
      for (let before = -16; before <= 24; before += STEP) {
        let square = 0;
        for (let i = 0; i < n; i++)
          square += ((y[i] as number) - before * (one[i] as number) - size * (x[i] as number)) ** 2;
        if (square > 60) continue;
        const belief = column === null ? 1 : Math.exp(-0.5 * (size / spread) ** 2) / (spread * Math.sqrt(2 * Math.PI));
        const weight = cell.weight * prior * step * belief * Math.exp(log - 0.5 * square);
        points.push({
          weight,
          before,
          size: kind === "still" ? 0 : size,
          level: before + (kind === "still" ? 0 : size),
          kind,
        });
      }
  };
  for (const cell of look.cells) {
    const unit = Math.sqrt(cell.daySd ** 2 + look.meanVariance);
    add(cell, null, 0.35, 1, "still");
    for (let k = 0; k < n; k++) add(cell, oddColumn(n, k), 0.15 / n, 4 * unit, "still");
    for (let k = 1; k < n; k++)
      add(cell, stepColumn(n, k), 0.25 / (n - 1), 2 * unit, k >= 2 && k <= n - 2 ? "step" : "alone");
    for (let k = 0; k <= n - 3; k++) add(cell, rampColumn(n, k), 0.25 / (n - 2), 2 * unit, "ramp");
  }
  return points;
}
