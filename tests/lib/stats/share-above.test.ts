import { describe, expect, it } from "vitest";
import { shareAbove } from "@/lib/stats/share-above";
import { expectNear } from "@/tests/reference/read-reference";
import { monteCarloBand, seededChances } from "./seeded-normals";

const first = Float64Array.of(0.5, 0.3, 0.2);
const second = Float64Array.of(0.1, 0.2, 0.7);

describe("reference: by hand", () => {
  it(".1 (.25) + .2 (.5 + .15) + .7 (.8 + .1) = .785", () => {
    expectNear(shareAbove(first, second), 0.785, { rel: 1e-14 });
  });
});

describe("too little and bad input", () => {
  it("3 cells and 2 are refused; no cell gives 0", () => {
    expect(() => shareAbove(first, Float64Array.of(0.5, 0.5))).toThrow("got 3 and 2 cells");
    expect(shareAbove(new Float64Array(0), new Float64Array(0))).toBe(0);
  });
});

describe("invariance", () => {
  it("exchanged beliefs add up to 1, equal ones give a half", () => {
    expectNear(shareAbove(first, second) + shareAbove(second, first), 1, { rel: 1e-14 });
    expectNear(shareAbove(first, first), 0.5, { rel: 1e-14 });
  });
});

describe("calibration", () => {
  it("20,000 drawn pairs, ties counting half, come within 4 standard errors", () => {
    const chance = seededChances(223);
    const draw = (belief: Float64Array): number => {
      let left = chance();
      return belief.findIndex((weight, j) => {
        left -= weight;
        return left < 0 || j === belief.length - 1;
      });
    };
    const runs = 20_000;
    let above = 0;
    for (let run = 0; run < runs; run++) {
      const [from, to] = [draw(first), draw(second)];
      above += to > from ? 1 : to === from ? 0.5 : 0;
    }
    expectNear(above / runs, 0.785, { abs: monteCarloBand(0.785, runs) });
  });
});
