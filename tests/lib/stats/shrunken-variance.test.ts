import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { shrunkenVariance } from "@/lib/stats/shrunken-variance";
import { expectNear } from "@/tests/reference/read-reference";
import { seededNormals } from "./seeded-normals";

describe("reference", () => {
  it("Smyth (2004): 4 degrees of 1.5² and 12 of 1² are (9 + 12) / 16 = 1.3125", () => {
    expectNear(shrunkenVariance({ variance: 1, degrees: 12 }, { variance: 2.25, degrees: 4 }), 1.3125, { rel: 1e-14 });
  });
});

describe("too little and bad input", () => {
  it("nothing measured gives the expected one back", () => {
    expect(shrunkenVariance({ variance: 0, degrees: 0 }, { variance: 2.25, degrees: 4 })).toBe(2.25);
  });
  it("negative numbers, NaN and an expectation worth nothing are refused", () => {
    expect(() => shrunkenVariance({ variance: -1, degrees: 2 }, { variance: 1, degrees: 4 })).toThrow("got -1");
    expect(() => shrunkenVariance({ variance: 1, degrees: Number.NaN }, { variance: 1, degrees: 4 })).toThrow("NaN");
    expect(() => shrunkenVariance({ variance: 1, degrees: 2 }, { variance: 1, degrees: 0 })).toThrow(
      "expected.degrees",
    );
  });
});

describe("invariance", () => {
  const positive = fc.double({ min: 0.01, max: 100, noNaN: true });
  it("lies between the two, and scales with them", () => {
    fc.assert(
      fc.property(positive, positive, positive, positive, (variance, degrees, expected, worth) => {
        const got = shrunkenVariance({ variance, degrees }, { variance: expected, degrees: worth });
        expect(got).toBeGreaterThanOrEqual(Math.min(variance, expected) * (1 - 1e-12));
        expect(got).toBeLessThanOrEqual(Math.max(variance, expected) * (1 + 1e-12));
        const scaled = shrunkenVariance(
          { variance: 9 * variance, degrees },
          { variance: 9 * expected, degrees: worth },
        );
        expectNear(scaled, 9 * got, { rel: 1e-12 });
      }),
    );
  });
  it("much measured leaves the measured one", () => {
    expectNear(shrunkenVariance({ variance: 4, degrees: 1e9 }, { variance: 1, degrees: 4 }), 4, { rel: 1e-6 });
  });
});

describe("calibration", () => {
  it("2000 sources whose sds differ by 3 in 10, 8 degrees each: shrunk by 10 degrees they miss by less than raw and than pooled", () => {
    const normal = seededNormals(2004);
    const missed = { raw: 0, shrunk: 0, pooled: 0 };
    for (let source = 0; source < 2000; source++) {
      const sd = Math.exp(0.3 * normal());
      let squares = 0;
      for (let i = 0; i < 8; i++) squares += (sd * normal()) ** 2;
      const variance = squares / 8;
      const common = Math.exp(2 * 0.3 ** 2);
      const shrunk = shrunkenVariance({ variance, degrees: 8 }, { variance: common, degrees: 10 });
      missed.raw += (Math.log(variance) / 2 - Math.log(sd)) ** 2;
      missed.shrunk += (Math.log(shrunk) / 2 - Math.log(sd)) ** 2;
      missed.pooled += (Math.log(common) / 2 - Math.log(sd)) ** 2;
    }
    expect(missed.shrunk).toBeLessThan(0.8 * missed.raw);
    expect(missed.shrunk).toBeLessThan(0.8 * missed.pooled);
  });
});
