import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { hiddenReason } from "@/lib/stats/hidden-reason";
import { expectNear } from "@/tests/reference/read-reference";
import { monteCarloBand, seededChances } from "./seeded-normals";

describe("reference", () => {
  it("VanderWeele and Ding's (2017) example, risk ratio 3.9 (1.8 to 8.7): E-values 7.26 and 3.0 (printed values from memory)", () => {
    const asDifference = (ratio: number) => Math.log(ratio) / 0.91;
    const found = hiddenReason({ estimate: asDifference(3.9), low95: asDifference(1.8), high95: asDifference(8.7) }, 1);
    expectNear(found.estimate, 7.26, { abs: 0.005 });
    expectNear(found.interval, 3, { abs: 0.005 });
  });
  it("their formula for a difference: risk ratio exp(.91 d), E-value RR + sqrt(RR (RR - 1))", () => {
    const ratio = Math.exp(0.91 * 0.5);
    const found = hiddenReason({ estimate: -1, low95: -2, high95: 0.5 }, 2);
    expectNear(found.estimate, ratio + Math.sqrt(ratio * (ratio - 1)), { rel: 1e-14 });
    expect(found.interval).toBe(1);
  });
});

describe("too little and bad input", () => {
  it.each([
    [{ estimate: 1, low95: 2, high95: 3 }, 1],
    [{ estimate: Number.NaN, low95: 0, high95: 1 }, 1],
    [{ estimate: 0, low95: Number.NEGATIVE_INFINITY, high95: 1 }, 1],
    [{ estimate: 0, low95: -1, high95: 1 }, 0],
  ])("%o with an sd of %d throws", (difference, sd) => {
    expect(() => hiddenReason(difference, sd)).toThrow(RangeError);
  });
});

describe("invariance", () => {
  it("sign and unit are nothing; the interval never asks for more than the estimate; no difference asks for 1", () => {
    const size = fc.double({ min: 0.001, max: 3, noNaN: true });
    fc.assert(
      fc.property(size, size, size, (estimate, reach, unit) => {
        const given = { estimate, low95: estimate - reach, high95: estimate + reach };
        const found = hiddenReason(given, 1);
        const mirrored = { estimate: -estimate, low95: -given.high95, high95: -given.low95 };
        expect(hiddenReason(mirrored, 1)).toEqual(found);
        const other = { estimate: estimate * unit, low95: given.low95 * unit, high95: given.high95 * unit };
        expectNear(hiddenReason(other, unit).estimate, found.estimate, { rel: 1e-9 });
        expect(found.interval).toBeLessThanOrEqual(found.estimate);
        expect(hiddenReason({ estimate: 0, low95: -reach, high95: reach }, 1)).toEqual({ estimate: 1, interval: 1 });
      }),
    );
  });
});

describe("calibration", () => {
  it("a hidden cause of exactly that strength makes the whole ratio: VanderWeele and Ding's bound, 400,000 draws", () => {
    // A cause that everybody exposed has and 1/E of the others, and that takes the risk E times as high.
    const ratio = 2;
    const { estimate: strength } = hiddenReason({ estimate: Math.log(ratio) / 0.91, low95: 0, high95: 2 }, 1);
    const chance = seededChances(3);
    const runs = 200_000;
    const risk = 0.1;
    const cases = (share: number) => {
      let sum = 0;
      for (let i = 0; i < runs; i++) if (chance() < risk * (chance() < share ? strength : 1)) sum++;
      return sum / runs;
    };
    const exposed = cases(1);
    const others = cases(1 / strength);
    const truth = risk * (1 - 1 / strength + 1);
    expectNear(others, truth, { abs: monteCarloBand(truth, runs) });
    expectNear(exposed / others, ratio, { rel: 0.05 });
  });
});
