import { describe, expect, it } from "vitest";
import { cholesky } from "@/lib/stats/cholesky";
import { whiten } from "@/lib/stats/whiten";
import { whitenedSteps } from "@/lib/stats/whitened-steps";
import { seeded } from "./made-series";

/** A covariance that is surely positive definite: A A' plus the size on the diagonal. */
function madeCovariance(size: number, random: () => number): Float64Array {
  const a = Array.from({ length: size * size }, () => random() - 0.5);
  return Float64Array.from({ length: size * size }, (_, at) => {
    const [i, j] = [Math.floor(at / size), at % size];
    let sum = i === j ? 1 : 0;
    for (let k = 0; k < size; k++) sum += (a[i * size + k] as number) * (a[j * size + k] as number);
    return sum;
  });
}

describe("reference", () => {
  it("every column is the step, whitened on its own by forward substitution", () => {
    const size = 7;
    const factor = cholesky(madeCovariance(size, seeded(3)), size);
    const { columns, products } = whitenedSteps(factor, size);
    for (let k = 0; k < size; k++) {
      const step = Float64Array.from({ length: size }, (_, i) => (i >= k ? 1 : 0));
      const white = whiten(factor, step, size);
      white.forEach((value, i) => {
        expect(columns[k * size + i]).toBeCloseTo(value, 12);
      });
      for (let j = 0; j <= k; j++) {
        const product = white.reduce((sum, value, i) => sum + value * (columns[j * size + i] as number), 0);
        expect(products[j * size + k]).toBeCloseTo(product, 12);
      }
    }
  });
  it("worked by hand: with variances of 4 the steps' products are the groups they share over 4", () => {
    const { products } = whitenedSteps(Float64Array.from([2, 0, 0, 0, 2, 0, 0, 0, 2]), 3);
    expect([...products]).toEqual([0.75, 0.5, 0.25, 0, 0.5, 0.25, 0, 0, 0.25]);
  });
});

describe("too little", () => {
  it("no group has no step", () => {
    expect(whitenedSteps(new Float64Array(0), 0).columns.length).toBe(0);
  });
});
