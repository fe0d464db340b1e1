import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ewmaChart } from "@/lib/stats/ewma-chart";
import { ewmaRunLength } from "@/lib/stats/ewma-run-length";
import { answerOf, expectAllNear, expectNear, readReference } from "@/tests/reference/read-reference";
import { seededNormals } from "./seeded-normals";

interface Input {
  readonly lambda: number;
  readonly L: number;
  readonly shift: number[];
}

describe("reference: Lucas & Saccucci (1990), and R spc 0.6.7, xewma.arl", () => {
  it.each(readReference<Input, { arl: number[] }>("05b_chart_constants_arl", "ewma_arl"))(
    "$id, shifts 0 to 4, within 1e-4 and as printed",
    (one) => {
      const got = one.input.shift.map((shift) => ewmaRunLength(one.input.lambda, one.input.L, shift));
      expectAllNear(got, one.expected.arl, one.tolerance, "run length");
      const printed = (one.published as { arl: number[] }).arl;
      const room = { rel: one.tolerance.published_rel as number, abs: one.tolerance.published_abs as number };
      expectAllNear(got, printed, room, "printed");
    },
  );

  it("a weight of 1 is the chart of single values: 370.4 in control, 43.9 after one sd", () => {
    const [one] = readReference<{ shift: number[] }, { one_point: number[] }>(
      "05b_chart_constants_arl",
      "shewhart_arl",
    );
    if (!one) throw new Error("no case");
    const got = one.input.shift.map((shift) => ewmaRunLength(1, 3, shift));
    expectAllNear(got, one.expected.one_point, one.tolerance, "run length");
  });
});

describe("too little and bad input", () => {
  it("a weight of 0 or 1.5, a limit of 0 or 7 and an endless shift are refused", () => {
    expect(() => ewmaRunLength(0, 3, 0)).toThrow("weight must lie above 0, to 1, got 0");
    expect(() => ewmaRunLength(1.5, 3, 0)).toThrow("got 1.5");
    expect(() => ewmaRunLength(0.2, 0, 0)).toThrow("limit must lie above 0, to 6, got 0");
    expect(() => ewmaRunLength(0.2, 7, 0)).toThrow("got 7");
    expect(() => ewmaRunLength(0.2, 3, Number.NaN)).toThrow("shift must be a finite number, got NaN");
  });
});

describe("invariance", () => {
  it("a mirrored shift changes nothing; a larger shift is found sooner, a wider limit later", () => {
    const weight = fc.double({ min: 0.05, max: 1, noNaN: true });
    const limit = fc.double({ min: 0.5, max: 3, noNaN: true });
    fc.assert(
      fc.property(weight, limit, fc.double({ min: 0, max: 3, noNaN: true }), (w, l, shift) => {
        const length = ewmaRunLength(w, l, shift);
        expect(length).toBeGreaterThanOrEqual(1);
        expectNear(ewmaRunLength(w, l, -shift), length, { rel: 1e-8 });
        expect(ewmaRunLength(w, l, shift + 0.1)).toBeLessThan(length);
        expect(ewmaRunLength(w, l + 0.1, shift)).toBeGreaterThan(length);
      }),
      { numRuns: 25 },
    );
  });
});

describe("calibration", () => {
  it("2000 charts of weight 0.25, limit 2 and shift 0.5: mean run length within 4 standard errors of what it says", () => {
    const normal = seededNormals(29);
    const expected = ewmaRunLength(0.25, 2, 0.5);
    const settings = { target: 0, sd: 1, weight: 0.25, limit: 2, limits: "settled" } as const;
    const lengths = Array.from({ length: 2000 }, () => {
      const values: number[] = [];
      for (;;) {
        for (let i = 0; i < 40; i++) values.push(0.5 + normal());
        const { signal } = answerOf(ewmaChart(values, settings));
        if (signal.kind === "signal") return signal.index + 1;
      }
    });
    const mean = lengths.reduce((sum, one) => sum + one, 0) / lengths.length;
    const sd = Math.sqrt(lengths.reduce((sum, one) => sum + (one - mean) ** 2, 0) / lengths.length);
    expectNear(mean, expected, { abs: (4 * sd) / Math.sqrt(lengths.length) }, "mean run length");
  });
});
