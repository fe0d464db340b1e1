import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { normalQuantile } from "@/lib/stats/normal-distribution";
import { wilsonInterval } from "@/lib/stats/wilson-interval";
import { answerOf, expectNear, readReference } from "@/tests/reference/read-reference";

interface Input {
  readonly x: number;
  readonly n: number;
  readonly conf: number;
}
interface Expected {
  readonly wilson: [number, number];
}

describe("reference: Newcombe (1998), Table I, and mpmath with 40 digits", () => {
  it.each(readReference<Input, Expected>("02b_proportion_intervals"))("$id within 1e-9, and as printed", (one) => {
    const { low, high } = answerOf(wilsonInterval(one.input.x, one.input.n, one.input.conf));
    expectNear(low, one.expected.wilson[0], one.tolerance, "low");
    expectNear(high, one.expected.wilson[1], one.tolerance, "high");
    const printed = (one.published as Expected | undefined)?.wilson;
    if (printed) {
      const room = { abs: one.tolerance.published_abs as number };
      expectNear(low, printed[0], room, "printed low");
      expectNear(high, printed[1], room, "printed high");
    }
  });
});

describe("too little and bad input", () => {
  it("no trial is too few of 1", () => {
    expect(wilsonInterval(0, 0, 0.95)).toEqual({ kind: "too-few", have: 0, need: 1 });
  });

  it("6 of 5 and a confidence of 95 are refused", () => {
    expect(() => wilsonInterval(6, 5, 0.95)).toThrow("got 6");
    expect(() => wilsonInterval(1, 5, 95)).toThrow("confidence must lie between 0 and 1, got 95");
  });
});

describe("invariance", () => {
  const counts = fc
    .integer({ min: 1, max: 300 })
    .chain((n) => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n)));

  it("counting failures instead mirrors the interval", () => {
    fc.assert(
      fc.property(counts, ([k, n]) => {
        const one = answerOf(wilsonInterval(k, n, 0.9));
        const other = answerOf(wilsonInterval(n - k, n, 0.9));
        expectNear(one.low, 1 - other.high, { abs: 1e-14 });
        expectNear(one.high, 1 - other.low, { abs: 1e-14 });
      }),
    );
  });

  it("each end is where the score test says exactly z: (k/n - p)^2 = z^2 p(1 - p)/n", () => {
    const z = normalQuantile(0.05);
    fc.assert(
      fc.property(counts, ([k, n]) => {
        const { low, high } = answerOf(wilsonInterval(k, n, 0.9));
        for (const p of [low, high]) {
          if (p > 0 && p < 1) expectNear((k / n - p) ** 2, (z * z * p * (1 - p)) / n, { rel: 1e-9 });
        }
      }),
    );
  });
});

describe("calibration", () => {
  it("n = 20: over shares from 0.05 to 0.95 it holds the truth 0.953 of the time on average, by summing all outcomes", () => {
    const n = 20;
    const shares = Array.from({ length: 91 }, (_, i) => 0.05 + i / 100);
    const cover = shares.map((p) => {
      let held = 0;
      let chance = (1 - p) ** n;
      for (let k = 0; k <= n; k++) {
        const { low, high } = answerOf(wilsonInterval(k, n, 0.95));
        if (low <= p && p <= high) held += chance;
        chance *= (((n - k) / (k + 1)) * p) / (1 - p);
      }
      return held;
    });
    const mean = cover.reduce((sum, value) => sum + value, 0) / cover.length;
    expectNear(mean, 0.953, { abs: 0.005 }, "mean cover");
    expect(Math.min(...cover)).toBeGreaterThan(0.9);
  });
});
