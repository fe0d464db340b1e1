import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cusumChart } from "@/lib/stats/cusum-chart";
import { cusumRunLength } from "@/lib/stats/cusum-run-length";
import { designCusum } from "@/lib/stats/design-cusum";
import { answerOf, expectNear, readReference } from "@/tests/reference/read-reference";
import { monteCarloBand, seededNormals } from "./seeded-normals";

function limitOf(slack: number, runLength: number, sides: "two-sided" | "upper"): number {
  const design = designCusum(slack, runLength, sides);
  if (design.kind !== "ok") throw new Error(`expected a limit, got ${JSON.stringify(design)}`);
  return design.limit;
}

describe("reference: R spc 0.6.7, xcusum.arl, and the limits of Hawkins (1993) for a run length of 370", () => {
  it("one-sided run lengths back to their limits within 1e-5", () => {
    const [one] = readReference<{ kh: [number, number][] }, { arl: number[] }>(
      "05b_chart_constants_arl",
      "cusum_one_sided",
    );
    if (!one) throw new Error("no case");
    one.input.kh.forEach(([slack, limit], i) => {
      expectNear(limitOf(slack, one.expected.arl[i] as number, "upper"), limit, { abs: 1e-5 }, `slack ${slack}`);
    });
  });

  // Hawkins, D.M. (1993), Journal of Quality Technology 25, 248-263; printed to two decimals, from memory.
  it.each([
    [0.25, 8.01],
    [0.5, 4.77],
    [0.75, 3.34],
    [1, 2.52],
  ])("two-sided, slack %d: limit %d", (slack, limit) => {
    expectNear(limitOf(slack, 370.4, "two-sided"), limit, { abs: 0.0051 });
  });
});

describe("too little and bad input", () => {
  it("two-sided, slack 0.5: even a limit of 0 runs 1 / (2 x 0.3085) = 1.62 values", () => {
    const design = designCusum(0.5, 1.5, "two-sided");
    if (design.kind !== "out-of-reach") throw new Error("expected out of reach");
    expectNear(design.least, 1 / (2 * 0.3085375387259869), { rel: 1e-12 });
  });

  it("a run length of 1, and a slack below 0, are refused", () => {
    expect(() => designCusum(0.5, 1, "upper")).toThrow("runLength must lie above 1, to 1000000, got 1");
    expect(() => designCusum(-1, 100, "upper")).toThrow("slack must be 0 or more, got -1");
  });
});

describe("invariance", () => {
  it("the run length of the limit is the wanted one; two sides at half the run length of one have its limit", () => {
    const slack = fc.double({ min: 0.2, max: 1, noNaN: true });
    fc.assert(
      fc.property(slack, fc.double({ min: 20, max: 1000, noNaN: true }), (k, runLength) => {
        const limit = limitOf(k, runLength, "upper");
        expectNear(cusumRunLength(k, limit, 0, "upper"), runLength, { rel: 1e-8 });
        expectNear(limitOf(k, runLength / 2, "two-sided"), limit, { rel: 1e-8 });
      }),
      { numRuns: 3 },
    );
  });
});

describe("calibration", () => {
  it("slack 0.5, run length 50: of 3000 charts in control the share without a signal after 50 values is near exp(-1), between .32 and .42", () => {
    // Once settled, runs end at a constant rate, so 0.368 + 4 standard errors (.035) and what the first values still lack.
    const normal = seededNormals(43);
    const limit = limitOf(0.5, 50, "two-sided");
    const runs = 3000;
    let quiet = 0;
    for (let run = 0; run < runs; run++) {
      const { upper, lower } = answerOf(
        cusumChart(Array.from({ length: 50 }, normal), { target: 0, slack: 0.5, limit }),
      );
      if (upper.signal.kind === "none" && lower.signal.kind === "none") quiet++;
    }
    expectNear(quiet / runs, Math.exp(-1), { abs: monteCarloBand(Math.exp(-1), runs) + 0.015 }, "quiet");
  });
});
