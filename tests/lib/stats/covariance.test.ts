import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cholesky } from "@/lib/stats/cholesky";
import { covariance } from "@/lib/stats/covariance";
import { lookData } from "@/lib/stats/look-data";
import { madeNoise, madeSeries } from "./made-series";

const noise = madeNoise([{ daySd: 2, correlation: 0.5 }], 3);
const matrixOf = (labels: readonly (string | null)[], offsets: readonly (string | null)[]) => {
  const series = madeSeries(
    labels.map(() => [1]),
    1,
  );
  const groups = series.groups.map((group, i) => ({
    ...group,
    sharedErrorSd: i + 1,
    sharedErrorLabel: labels[i] ?? null,
    offsetLabel: offsets[i] ?? null,
  }));
  const look = lookData({ ...series, groups }, noise);
  return { look, matrix: covariance(look, look.cells[0] as (typeof look.cells)[0]) };
};

describe("reference: entries by hand; day sd 2, correlation 0.5, replicate sd 3, shared sds 1 2 3", () => {
  it("no ties: diagonal 4 + sd^2 + 9, neighbours 2, next but one 1", () => {
    expect([...matrixOf([null, null, null], []).matrix]).toEqual([14, 2, 1, 2, 17, 2, 1, 2, 22]);
  });
  it("first and third share an error: 1 + 1 x 3 between them, diagonal as before", () => {
    expect([...matrixOf(["a", "b", "a"], []).matrix]).toEqual([14, 2, 4, 2, 17, 2, 4, 2, 22]);
  });
  it("two offset labels, sd 1.5: 2.25 more where labels are equal", () => {
    expect([...matrixOf([null, null, null], ["x", "x", "y"]).matrix]).toEqual([
      16.25, 4.25, 1, 4.25, 19.25, 2, 1, 2, 24.25,
    ]);
  });
  it("one offset label for all is part of the level: nothing added", () => {
    expect([...matrixOf([null, null, null], ["x", "x", "x"]).matrix]).toEqual([14, 2, 1, 2, 17, 2, 1, 2, 22]);
  });
});

describe("invariance", () => {
  it("any labels give a symmetric matrix with a Cholesky factor", () => {
    const label = fc.constantFrom("a", "b", "c", null);
    fc.assert(
      fc.property(fc.array(fc.tuple(label, label), { minLength: 2, maxLength: 9 }), (pairs) => {
        const { look, matrix } = matrixOf(
          pairs.map(([shared]) => shared),
          pairs.map(([, offset]) => offset),
        );
        const n = look.count;
        for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) expect(matrix[i * n + j]).toBe(matrix[j * n + i]);
        expect(cholesky(matrix, n).every(Number.isFinite)).toBe(true);
      }),
    );
  });
});
