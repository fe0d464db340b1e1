import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cusumChart } from "@/lib/stats/cusum-chart";
import { cusumRunLength } from "@/lib/stats/cusum-run-length";
import { answerOf, expectAllNear, expectNear, readReference } from "@/tests/reference/read-reference";
import { seededNormals } from "./seeded-normals";

describe("reference: Montgomery, Introduction to SQC, Table 9.3, and R spc 0.6.7, xcusum.arl", () => {
  it("slack 0.5, limit 4, two-sided, shifts 0 to 3: 168, 74.2, 26.6, ... 2.19", () => {
    const [one] = readReference<{ k: number; h: number; shift: number[] }, { arl: number[] }>(
      "05b_chart_constants_arl",
      "cusum_arl",
    );
    if (!one) throw new Error("no case");
    const got = one.input.shift.map((shift) => cusumRunLength(one.input.k, one.input.h, shift, "two-sided"));
    expectAllNear(got, one.expected.arl, one.tolerance, "run length");
    expectAllNear(
      got,
      (one.published as { arl: number[] }).arl,
      { rel: one.tolerance.published_rel as number },
      "printed",
    );
  });

  it("one side in control: slack 0.25 to 1, limit 2.52 to 8", () => {
    const [one] = readReference<{ kh: [number, number][] }, { arl: number[] }>(
      "05b_chart_constants_arl",
      "cusum_one_sided",
    );
    if (!one) throw new Error("no case");
    const got = one.input.kh.map(([slack, limit]) => cusumRunLength(slack, limit, 0, "upper"));
    expectAllNear(got, one.expected.arl, one.tolerance, "run length");
  });
});

describe("too little and bad input", () => {
  it("a limit of 0, a slack below 0 and a shift of NaN are refused", () => {
    expect(() => cusumRunLength(0.5, 0, 0, "upper")).toThrow("limit must be above 0 and finite, got 0");
    expect(() => cusumRunLength(-1, 4, 0, "upper")).toThrow("slack must be 0 or more, got -1");
    expect(() => cusumRunLength(0.5, 4, Number.NaN, "upper")).toThrow("shift must be a finite number, got NaN");
  });
});

describe("invariance", () => {
  it("a run too long to count is said as 1e14 or less, not as nonsense", () => {
    const length = cusumRunLength(4, 8, -4, "upper");
    expect(length).toBeGreaterThan(1e12);
    expect(length).toBeLessThanOrEqual(2e14);
  });

  const slack = fc.double({ min: 0, max: 1.5, noNaN: true });
  const limit = fc.double({ min: 0.1, max: 5, noNaN: true });
  const shift = fc.double({ min: 0, max: 3, noNaN: true });

  it("a limit near 0 signals as single values do: 1 / P(Z > slack - shift)", () => {
    expectNear(cusumRunLength(1, 1e-9, 0, "upper"), 1 / 0.15865525393145705, { rel: 1e-8 });
  });

  it("slack and shift count by their difference; two sides take a mirrored shift alike; a wider limit takes longer", () => {
    fc.assert(
      fc.property(slack, limit, shift, (k, h, m) => {
        const length = cusumRunLength(k, h, m, "upper");
        expectNear(cusumRunLength(k + 0.5, h, m + 0.5, "upper"), length, { rel: 1e-8 });
        expect(cusumRunLength(k, h + 0.1, m, "upper")).toBeGreaterThan(length);
        const both = cusumRunLength(k, h, m, "two-sided");
        expectNear(cusumRunLength(k, h, -m, "two-sided"), both, { rel: 1e-8 });
        expect(both).toBeLessThanOrEqual(length);
      }),
      { numRuns: 25 },
    );
  });
});

describe("calibration", () => {
  it("2000 charts of slack 0.5, limit 3 and shift 0.5, both sides: mean run length within 4 standard errors of what it says", () => {
    const normal = seededNormals(37);
    const lengths = Array.from({ length: 2000 }, () => {
      const values: number[] = [];
      for (;;) {
        for (let i = 0; i < 40; i++) values.push(0.5 + normal());
        const { upper, lower } = answerOf(cusumChart(values, { target: 0, slack: 0.5, limit: 3 }));
        const first = [upper.signal, lower.signal].map((one) =>
          one.kind === "signal" ? one.index + 1 : values.length + 1,
        );
        const length = Math.min(...first);
        if (length <= values.length) return length;
      }
    });
    const mean = lengths.reduce((sum, one) => sum + one, 0) / lengths.length;
    const sd = Math.sqrt(lengths.reduce((sum, one) => sum + (one - mean) ** 2, 0) / lengths.length);
    const expected = cusumRunLength(0.5, 3, 0.5, "two-sided");
    expectNear(mean, expected, { abs: (4 * sd) / Math.sqrt(lengths.length) }, "mean run length");
  });
});
