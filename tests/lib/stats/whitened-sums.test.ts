import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { emptyCellSums } from "@/lib/stats/cell-sums";
import { cholesky } from "@/lib/stats/cholesky";
import { covariance } from "@/lib/stats/covariance";
import { dotProduct } from "@/lib/stats/dot-product";
import { lookData } from "@/lib/stats/look-data";
import type { NuisanceCell } from "@/lib/stats/nuisance-grid";
import { oddColumn, rampColumn, stepColumn } from "@/lib/stats/shapes";
import { whiten } from "@/lib/stats/whiten";
import { whitenedSums } from "@/lib/stats/whitened-sums";
import { madeNoise, madeSeries } from "./made-series";

const label = fc.constantFrom("a", "b", null);
const groups = fc.array(
  fc.record({ value: fc.double({ min: -20, max: 20, noNaN: true }), shared: label, offset: label }),
  { minLength: 4, maxLength: 12 },
);

describe("reference: every column whitened on its own, ties of both kinds", () => {
  it("inner products of steps, ramps and odd groups agree to 1e-9", () => {
    fc.assert(
      fc.property(groups, (list) => {
        const series = madeSeries(
          list.map((group) => [group.value]),
          1.5,
        );
        const tied = series.groups.map((group, i) => ({
          ...group,
          sharedErrorLabel: list[i]?.shared ?? null,
          offsetLabel: list[i]?.offset ?? null,
        }));
        const look = lookData({ ...series, groups: tied }, madeNoise([{ daySd: 1, correlation: 0.3 }], 3));
        const cell = look.cells[0] as NuisanceCell;
        const n = look.count;
        const sums = emptyCellSums(n);
        whitenedSums(look, cell, sums);
        const factor = cholesky(covariance(look, cell), n);
        const y = whiten(factor, look.values, n);
        const one = whiten(factor, new Float64Array(n).fill(1), n);
        const check = (column: Float64Array, k: number, shape: typeof sums.step): void => {
          const x = whiten(factor, column, n);
          expect(shape.xx[k]).toBeCloseTo(dotProduct(x, 0, x, 0, n), 9);
          expect(shape.x1[k]).toBeCloseTo(dotProduct(x, 0, one, 0, n), 9);
          expect(shape.xy[k]).toBeCloseTo(dotProduct(x, 0, y, 0, n), 9);
        };
        for (let k = 0; k < n; k++) {
          check(stepColumn(n, k), k, sums.step);
          check(oddColumn(n, k), k, sums.odd);
          if (k < n - 1) check(rampColumn(n, k), k, sums.ramp);
        }
      }),
    );
  });
});
