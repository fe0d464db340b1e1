import { describe, expect, it } from "vitest";
import { inverseFactor } from "@/lib/stats/inverse-factor";
import { seeded } from "./made-series";

describe("reference", () => {
  it("worked by hand: (2 0; 3 4) has the inverse (1/2 0; -3/8 1/4)", () => {
    expect([...inverseFactor(Float64Array.from([2, 0, 3, 4]), 2)]).toEqual([0.5, 0, -0.375, 0.25]);
  });
  it("the factor times its inverse is the identity", () => {
    const random = seeded(4);
    const size = 9;
    const factor = Float64Array.from({ length: size * size }, (_, at) => {
      const [i, j] = [Math.floor(at / size), at % size];
      return i === j ? 1 + random() : j < i ? random() - 0.5 : 0;
    });
    const inverse = inverseFactor(factor, size);
    for (let i = 0; i < size; i++) {
      for (let j = 0; j < size; j++) {
        let sum = 0;
        for (let k = 0; k < size; k++) sum += (factor[i * size + k] as number) * (inverse[k * size + j] as number);
        expect(sum).toBeCloseTo(i === j ? 1 : 0, 12);
      }
    }
  });
});

describe("too little", () => {
  it("no group: no entry", () => {
    expect(inverseFactor(new Float64Array(0), 0).length).toBe(0);
  });
});
