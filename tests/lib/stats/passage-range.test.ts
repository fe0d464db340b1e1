import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { FirstPassage } from "@/lib/stats/first-passage";
import { passageRange } from "@/lib/stats/passage-range";
import { expectNear } from "@/tests/reference/read-reference";
import { monteCarloBand, seededChances } from "./seeded-normals";

/** Reached evenly between two days, with some of the chance never. */
const even = (from: number, to: number, never = 0, already = 0): FirstPassage => ({
  never,
  reachedBy: (day) => already + (1 - never - already) * Math.min(1, Math.max(0, (day - from) / (to - from))),
});

describe("reference: an even passage by hand", () => {
  it("between day 0 and 140, .8 is held by day 14 to 126", () => {
    const range = passageRange(even(0, 140), 0.8, 140);
    expectNear(range?.from ?? -1, 14, { abs: 1e-9 });
    expectNear(range?.to ?? -1, 126, { abs: 1e-9 });
  });

  it("with .1 never, .05 lies before and .05 after what is held, never besides: day 7.78 to 132.22", () => {
    const range = passageRange(even(0, 140, 0.1), 0.8, 140);
    expectNear(range?.from ?? -1, (0.05 / 0.9) * 140, { abs: 1e-9 });
    expectNear(range?.to ?? -1, (0.85 / 0.9) * 140, { abs: 1e-9 });
  });
});

describe("too little and bad input", () => {
  it("null where the horizon, what may never come, or what is reached already leaves less than is to be held", () => {
    expect(passageRange(even(0, 140), 0.8, 100)).toBeNull();
    expect(passageRange(even(0, 140, 0.25), 0.8, 140)).toBeNull();
    expect(passageRange(even(0, 140, 0.1, 0.15), 0.8, 140)).toBeNull();
  });

  it("a probability of 1 and a horizon of 0 are refused", () => {
    expect(() => passageRange(even(0, 1), 1, 10)).toThrow("held");
    expect(() => passageRange(even(0, 1), 0.8, 0)).toThrow("horizon");
  });
});

describe("invariance", () => {
  it("holds its probability and stays between now and the horizon, whatever the passage", () => {
    const days = fc.tuple(fc.integer({ min: 0, max: 80 }), fc.integer({ min: 20, max: 90 }));
    fc.assert(
      fc.property(days, fc.double({ min: 0, max: 0.15, noNaN: true }), ([from, length], never) => {
        const passage = even(from, from + length, never);
        const range = passageRange(passage, 0.8, 182);
        if (range === null) throw new Error("a range there must be");
        expect(range.from).toBeGreaterThanOrEqual(0);
        expect(range.to).toBeLessThanOrEqual(182);
        // A corner between two half weeks is cut by at most what half a week holds.
        expectNear(passage.reachedBy(range.to) - passage.reachedBy(range.from), 0.8, { abs: 3.5 / length });
      }),
      { numRuns: 50 },
    );
  });
});

describe("calibration", () => {
  it("days drawn from a passage lie in the range in .8 of 4000, within four errors", () => {
    const chance = seededChances(9);
    const range = passageRange(even(10, 150), 0.8, 182);
    if (range === null) throw new Error("no range");
    const runs = 4000;
    let held = 0;
    for (let run = 0; run < runs; run++) {
      const day = 10 + 140 * chance();
      if (day >= range.from && day <= range.to) held++;
    }
    expectNear(held / runs, 0.8, { abs: monteCarloBand(0.8, runs) });
  });
});
