import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { householderQr } from "@/lib/stats/householder-qr";
import { expectAllNear, expectNear } from "@/tests/reference/read-reference";

describe("householderQr", () => {
  it("reference: columns (1, 1, 1) and (1, 2, 3) through 1, 2, 2 give 2/3 and 1/2, by hand", () => {
    const { rank, solve } = householderQr([
      [1, 1, 1],
      [1, 2, 3],
    ]);
    expect(rank).toBe(2);
    expectAllNear(solve([1, 2, 2]), [2 / 3, 1 / 2], { rel: 1e-14 });
  });

  it("reference: the inverse's squares are those of the normal equations: 7/3 and 1/2, by hand", () => {
    const { inverse } = householderQr([
      [1, 1, 1],
      [1, 2, 3],
    ]);
    expectAllNear(
      inverse.map((row) => row.reduce((sum, v) => sum + v * v, 0)),
      [7 / 3, 1 / 2],
      { rel: 1e-14 },
    );
  });

  it("too little and bad input: (1, 1), (2, 2) has rank 1 and refuses to solve; more columns than rows are refused", () => {
    const { rank, solve, inverse } = householderQr([
      [1, 1],
      [2, 2],
    ]);
    expect([rank, inverse]).toEqual([1, []]);
    expect(() => solve([1, 2])).toThrow("rank 1 of 2");
    expect(() => householderQr([[1], [2]])).toThrow("got 2");
    expect(() => householderQr([])).toThrow("got 0");
    expect(
      householderQr([
        [0, 0],
        [1, 2],
      ]).rank,
    ).toBe(1);
  });

  it("invariance: what is left over stands square on every column", () => {
    const column = fc.array(fc.integer({ min: -20, max: 20 }), { minLength: 7, maxLength: 7 });
    fc.assert(
      fc.property(fc.array(column, { minLength: 1, maxLength: 3 }), column, (design, right) => {
        const qr = householderQr(design);
        if (qr.rank < design.length) return;
        const solution = qr.solve(right);
        const rest = right.map(
          (value, i) => value - design.reduce((sum, c, j) => sum + (c[i] as number) * (solution[j] as number), 0),
        );
        for (const c of design)
          expectNear(
            c.reduce((sum, v, i) => sum + v * (rest[i] as number), 0),
            0,
            { abs: 1e-9 },
          );
      }),
    );
  });
});
