import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { clopperPearsonInterval } from "@/lib/stats/clopper-pearson-interval";
import { answerOf, expectNear, readReference } from "@/tests/reference/read-reference";

interface Input {
  readonly x: number;
  readonly n: number;
  readonly conf: number;
}
interface Expected {
  readonly clopper_pearson: [number, number];
}

/** Chance of at most k of n, term by term. */
function atMost(k: number, n: number, p: number): number {
  let sum = 0;
  let chance = (1 - p) ** n;
  for (let i = 0; i <= k; i++) {
    sum += chance;
    chance *= (((n - i) / (i + 1)) * p) / (1 - p);
  }
  return sum;
}

describe("reference: Newcombe (1998), Table I, and mpmath with 40 digits", () => {
  it.each(readReference<Input, Expected>("02b_proportion_intervals"))("$id within 1e-9, and as printed", (one) => {
    const { low, high } = answerOf(clopperPearsonInterval(one.input.x, one.input.n, one.input.conf));
    expectNear(low, one.expected.clopper_pearson[0], one.tolerance, "low");
    expectNear(high, one.expected.clopper_pearson[1], one.tolerance, "high");
    const printed = (one.published as Expected | undefined)?.clopper_pearson;
    if (printed) {
      const room = { abs: one.tolerance.published_abs as number };
      expectNear(low, printed[0], room, "printed low");
      expectNear(high, printed[1], room, "printed high");
    }
  });
});

describe("too little and bad input", () => {
  it("no trial is too few of 1", () => {
    expect(clopperPearsonInterval(0, 0, 0.95)).toEqual({ kind: "too-few", have: 0, need: 1 });
  });

  it("-1 of 5 and a confidence of 1 are refused", () => {
    expect(() => clopperPearsonInterval(-1, 5, 0.95)).toThrow("got -1");
    expect(() => clopperPearsonInterval(1, 5, 1)).toThrow("confidence must lie between 0 and 1, got 1");
  });
});

describe("invariance", () => {
  it("each end leaves exactly 2.5 of 100 outside, by summing binomial chances", () => {
    const counts = fc
      .integer({ min: 1, max: 60 })
      .chain((n) => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n)));
    fc.assert(
      fc.property(counts, ([k, n]) => {
        const { low, high } = answerOf(clopperPearsonInterval(k, n, 0.95));
        if (k > 0) expectNear(1 - atMost(k - 1, n, low), 0.025, { rel: 1e-9 }, "above low");
        if (k < n) expectNear(atMost(k, n, high), 0.025, { rel: 1e-9 }, "below high");
      }),
    );
  });
});

describe("calibration", () => {
  it("n = 20: no share from 0.01 to 0.99 is held less than 0.95 of the time, by summing all outcomes", () => {
    const ends = Array.from({ length: 21 }, (_, k) => answerOf(clopperPearsonInterval(k, 20, 0.95)));
    for (let i = 1; i < 100; i++) {
      const p = i / 100;
      const held = ends.reduce((sum, { low, high }, k) => {
        const chance = atMost(k, 20, p) - (k > 0 ? atMost(k - 1, 20, p) : 0);
        return low <= p && p <= high ? sum + chance : sum;
      }, 0);
      expect(held, `share ${p}`).toBeGreaterThanOrEqual(0.95 - 1e-12);
    }
  });
});
