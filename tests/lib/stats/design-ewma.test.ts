import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { designEwma } from "@/lib/stats/design-ewma";
import { ewmaChart } from "@/lib/stats/ewma-chart";
import { ewmaRunLength } from "@/lib/stats/ewma-run-length";
import { normalUpperTail } from "@/lib/stats/normal-distribution";
import { answerOf, expectNear, readReference } from "@/tests/reference/read-reference";
import { monteCarloBand, seededNormals } from "./seeded-normals";

describe("reference: Lucas & Saccucci (1990), limits for a run length of 500", () => {
  it.each(readReference<{ lambda: number; L: number }, { arl: number[] }>("05b_chart_constants_arl", "ewma_arl"))(
    "$id: the printed limit to its third decimal, and R spc's run length back to it within 1e-5",
    (one) => {
      expectNear(designEwma(one.input.lambda, 500), one.input.L, { abs: 6e-4 }, "printed limit");
      expectNear(designEwma(one.input.lambda, one.expected.arl[0] as number), one.input.L, { abs: 1e-5 }, "limit");
    },
  );

  it("a weight of 1 and 370.398 values give 3 sds", () => {
    expectNear(designEwma(1, 370.398347344959), 3, { rel: 1e-9 });
  });
});

describe("too little and bad input", () => {
  it("a run length of 1 or two million and a weight of 0 are refused; a million with a weight of 0.05 isn't", () => {
    expectNear(ewmaRunLength(0.05, designEwma(0.05, 1e6), 0), 1e6, { rel: 1e-6 });
    expect(() => designEwma(0.2, 1)).toThrow("runLength must lie above 1, to 1000000, got 1");
    expect(() => designEwma(0.2, 2e6)).toThrow("got 2000000");
    expect(() => designEwma(0, 100)).toThrow("weight must lie above 0, to 1, got 0");
  });
});

describe("invariance", () => {
  it("the run length of the limit is the wanted one; a weight of 1 is the normal quantile", () => {
    const wanted = fc.double({ min: 2, max: 1000, noNaN: true });
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 1, noNaN: true }), wanted, (weight, runLength) => {
        expectNear(ewmaRunLength(weight, designEwma(weight, runLength), 0), runLength, { rel: 1e-8 });
        expectNear(2 * normalUpperTail(designEwma(1, runLength)), 1 / runLength, { rel: 1e-7 });
      }),
      { numRuns: 4 },
    );
  });
});

describe("calibration", () => {
  it("weight 0.2, run length 50: of 3000 charts in control the share without a signal after 50 values is near exp(-1), between .33 and .41", () => {
    // Once settled, runs end at a constant rate, so 0.368 + 4 standard errors (.035) and what the first values still lack.
    const normal = seededNormals(41);
    const limit = designEwma(0.2, 50);
    const runs = 3000;
    let quiet = 0;
    for (let run = 0; run < runs; run++) {
      const values = Array.from({ length: 50 }, normal);
      const chart = answerOf(ewmaChart(values, { target: 0, sd: 1, weight: 0.2, limit, limits: "settled" }));
      if (chart.signal.kind === "none") quiet++;
    }
    expectNear(quiet / runs, Math.exp(-1), { abs: monteCarloBand(Math.exp(-1), runs) + 0.01 }, "quiet");
  });
});
