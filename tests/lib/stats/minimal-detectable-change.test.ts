import { describe, expect, it } from "vitest";
import { minimalDetectableChange } from "@/lib/stats/minimal-detectable-change";
import { expectNear, readReference } from "@/tests/reference/read-reference";
import { monteCarloBand, seededNormals } from "./seeded-normals";

describe("reference", () => {
  it("Bland & Altman (1986), peak flow: 1.96 x sqrt 2 x 15.31 = 42.43", () => {
    const [one] = readReference<unknown, { sem: number; mdc95: number }>("01c_reliability", "pefr_repeatability");
    if (!one) throw new Error("missing");
    expectNear(minimalDetectableChange(one.expected.sem, 0.95), one.expected.mdc95, one.tolerance);
  });
  it("mean of 5 replicates, shared sds 1 and 2, own sds 2 and 1.5: sqrt(1 + 4 + (4 + 2.25) / 5) = 2.50, detectable 6.93", () => {
    const standardError = Math.sqrt(1 ** 2 + 2 ** 2 + (2 ** 2 + 1.5 ** 2) / 5);
    expect(standardError).toBe(2.5);
    expect(minimalDetectableChange(standardError, 0.95).toFixed(2)).toBe("6.93");
  });
});

describe("too little and bad input", () => {
  it.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])("an error of %d is refused", (value) => {
    expect(() => minimalDetectableChange(value, 0.95)).toThrow(
      `standardError must be above 0 and finite, got ${value}`,
    );
  });
  it("a confidence of 95 is refused", () => {
    expect(() => minimalDetectableChange(1, 95)).toThrow("got 95");
  });
});

describe("invariance", () => {
  it("seven times the error is seven times the change; more confidence is more change", () => {
    expectNear(minimalDetectableChange(7, 0.9), 7 * minimalDetectableChange(1, 0.9), { rel: 1e-14 });
    expect(minimalDetectableChange(1, 0.99)).toBeGreaterThan(minimalDetectableChange(1, 0.95));
  });
});

describe("calibration", () => {
  it("20000 pairs that differ by error alone: 5 of 100 pass it, within 4 x 0.0015", () => {
    const normal = seededNormals(5);
    const runs = 20_000;
    const limit = minimalDetectableChange(2, 0.95);
    let past = 0;
    for (let run = 0; run < runs; run++) if (Math.abs(2 * normal() - 2 * normal()) > limit) past++;
    expectNear(past / runs, 0.05, { abs: monteCarloBand(0.05, runs) });
  });
});
