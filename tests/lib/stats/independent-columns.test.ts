import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { householderQr } from "@/lib/stats/householder-qr";
import { independentColumns } from "@/lib/stats/independent-columns";
import { readReference } from "@/tests/reference/read-reference";
import { seededNormals } from "./seeded-normals";

describe("reference", () => {
  it("the Longley data, known for columns near to dependence (NIST: certified at rank 7), are kept whole; their sum is not", () => {
    const [one] = readReference<{ x: number[][] }, unknown>("03a_linear_nist", "nist_linear_longley");
    const x = (one as { input: { x: number[][] } }).input.x;
    const columns = (x[0] as number[]).map((_, j) => x.map((row) => row[j] as number));
    const sum = x.map((row) => row.reduce((total, value) => total + value, 0));
    expect(independentColumns([...columns, sum])).toEqual([true, true, true, true, true, true, false]);
  });
  it("groups that make up everybody depend on the constant: the last goes", () => {
    expect(
      independentColumns([
        [1, 1, 0, 0],
        [0, 0, 1, 1],
      ]),
    ).toEqual([true, false]);
  });
});

describe("too little and bad input", () => {
  it("no columns: none; columns of nothing or of one value go", () => {
    expect(independentColumns([])).toEqual([]);
    expect(
      independentColumns([
        [0, 0, 0],
        [5, 5, 5],
        [1, 2, 3],
      ]),
    ).toEqual([false, false, true]);
  });
  it("unequal lengths and NaN throw", () => {
    expect(() => independentColumns([[1, 2], [1]])).toThrow("columns[1]");
    expect(() => independentColumns([[1, Number.NaN]])).toThrow("finite");
  });
});

describe("invariance", () => {
  it("units are nothing, and a doubled column is never kept twice", () => {
    const column = fc.array(fc.integer({ min: -9, max: 9 }), { minLength: 5, maxLength: 5 });
    fc.assert(
      fc.property(
        fc.array(column, { maxLength: 4 }),
        fc.double({ min: 1e-6, max: 1e6, noNaN: true }),
        (columns, unit) => {
          const kept = independentColumns(columns);
          expect(independentColumns(columns.map((one) => one.map((value) => value * unit)))).toEqual(kept);
          const twice = independentColumns([...columns, ...columns]);
          expect(twice).toEqual([...kept, ...columns.map(() => false)]);
        },
      ),
    );
  });
});

describe("calibration", () => {
  it("200 random designs, some columns sums of others: as many are kept as Householder's rank", () => {
    const normal = seededNormals(5);
    for (let run = 0; run < 200; run++) {
      const free = Array.from({ length: 3 }, () => Array.from({ length: 12 }, normal));
      const sum = (free[0] as number[]).map((value, i) => value - 2 * (free[1]?.[i] as number));
      const columns = run % 2 === 0 ? [...free, sum] : free;
      const { rank } = householderQr([new Array<number>(12).fill(1), ...columns]);
      expect(independentColumns(columns).filter(Boolean)).toHaveLength(rank - 1);
    }
  });
});
