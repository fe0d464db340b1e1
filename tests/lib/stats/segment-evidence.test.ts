import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type SegmentBelief, segmentEvidence } from "@/lib/stats/segment-evidence";
import { expectNear } from "@/tests/reference/read-reference";

const known: SegmentBelief = { kind: "known-sd", mean: 1, levelSd: 2, sd: 0.5 };
const unknown: SegmentBelief = { kind: "normal-gamma", mean: 1, strength: 0.2, shape: 2, rate: 1 };

/** Log density of a normal number. */
function normal(x: number, mean: number, sd: number): number {
  return -0.5 * Math.log(2 * Math.PI) - Math.log(sd) - (x - mean) ** 2 / (2 * sd * sd);
}

describe("reference", () => {
  it("one value of known sd is normal with variance 2^2 + 0.5^2 = 4.25 about 1", () => {
    expectNear(segmentEvidence([0.2], known), normal(0.2, 1, Math.sqrt(4.25)), { rel: 1e-14 });
  });

  it("one value of unknown sd is t with 4 degrees, place 1, scale sqrt(1 x 1.2 / (2 x 0.2)) (Bernardo & Smith 2000)", () => {
    const scale = Math.sqrt(1.2 / 0.4);
    const density = 0.375 / (scale * (1 + (0.2 - 1) ** 2 / (4 * scale ** 2)) ** 2.5);
    expectNear(segmentEvidence([0.2], unknown), Math.log(density), { rel: 1e-12 });
  });
});

describe("too little and bad input", () => {
  it("an empty stretch and a spread of 0 are refused", () => {
    expect(() => segmentEvidence([], known)).toThrow("got none");
    expect(() => segmentEvidence([1], { ...known, sd: 0 })).toThrow("sd must be above 0 and finite, got 0");
    expect(() => segmentEvidence([1], { kind: "normal-gamma", mean: 0, strength: 1, shape: -1, rate: 1 })).toThrow(
      "shape must be above 0",
    );
  });
});

describe("invariance", () => {
  const list = fc.array(fc.double({ min: -3, max: 3, noNaN: true }), { minLength: 1, maxLength: 6 });

  it("order is nothing; shifting values and belief together is nothing", () => {
    fc.assert(
      fc.property(list, fc.constantFrom(known, unknown), (values, belief) => {
        const before = segmentEvidence(values, belief);
        const moved = [...values].reverse().map((value) => value + 10);
        expectNear(segmentEvidence(moved, { ...belief, mean: 11 }), before, { rel: 1e-10, abs: 1e-10 });
      }),
    );
  });

  it("known sd: equals averaging the density over the level by 4000 slices, brute force", () => {
    fc.assert(
      fc.property(list, (values) => {
        let sum = 0;
        const width = 40 / 4000;
        for (let i = 0; i < 4000; i++) {
          const level = -19 + (i + 0.5) * width;
          sum +=
            width *
            Math.exp(normal(level, 1, 2) + values.reduce((total, value) => total + normal(value, level, 0.5), 0));
        }
        expectNear(Math.exp(segmentEvidence(values, known)), sum, { rel: 1e-8 });
      }),
      { numRuns: 25 },
    );
  });
});
