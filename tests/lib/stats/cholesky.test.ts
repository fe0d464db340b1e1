import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cholesky } from "@/lib/stats/cholesky";
import { farthest } from "./made-series";

describe("reference: a factor known in whole numbers", () => {
  it("4 12 -16 / 12 37 -43 / -16 -43 98 has the factor 2 / 6 1 / -8 5 3", () => {
    const factor = cholesky(Float64Array.from([4, 12, -16, 12, 37, -43, -16, -43, 98]), 3);
    expect([...factor]).toEqual([2, 0, 0, 6, 1, 0, -8, 5, 3]);
  });
});

describe("too little and bad input", () => {
  it("size 0 is empty; a matrix that isn't positive definite throws with its pivot", () => {
    expect(cholesky(new Float64Array(0), 0)).toHaveLength(0);
    expect(() => cholesky(Float64Array.from([1, 2, 2, 1]), 2)).toThrow("-3");
    expect(() => cholesky(Float64Array.from([Number.NaN]), 1)).toThrow("NaN");
  });
});

describe("invariance", () => {
  it("L L' is the matrix, and the factor of a leading block is the leading block of the factor", () => {
    const entries = fc.array(fc.double({ min: -3, max: 3, noNaN: true }), { minLength: 49, maxLength: 49 });
    fc.assert(
      fc.property(entries, (root) => {
        const size = 7;
        const matrix = new Float64Array(size * size);
        for (let i = 0; i < size; i++)
          for (let j = 0; j < size; j++) {
            let sum = i === j ? 1 : 0;
            for (let k = 0; k < size; k++) sum += (root[i * size + k] as number) * (root[j * size + k] as number);
            matrix[i * size + j] = sum;
          }
        const factor = cholesky(matrix, size);
        const back = matrix.map((_, at) => {
          const i = Math.floor(at / size);
          const j = at % size;
          let sum = 0;
          for (let k = 0; k < size; k++) sum += (factor[i * size + k] as number) * (factor[j * size + k] as number);
          return sum;
        });
        expect(farthest(back, matrix)).toBeLessThan(1e-11);
        const block = Float64Array.from(
          { length: 9 },
          (_, at) => matrix[Math.floor(at / 3) * size + (at % 3)] as number,
        );
        const leading = Float64Array.from(
          { length: 9 },
          (_, at) => factor[Math.floor(at / 3) * size + (at % 3)] as number,
        );
        expect([...cholesky(block, 3)]).toEqual([...leading]);
      }),
    );
  });
});
