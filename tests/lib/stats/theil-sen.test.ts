import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { theilSen } from "@/lib/stats/theil-sen";
import { answerOf, expectNear, type ReferenceCase, readReference } from "@/tests/reference/read-reference";

interface Input {
  readonly x?: number[];
  readonly t?: number[];
  readonly y: number[];
  readonly conf: number;
}
interface Expected {
  readonly slope: number;
  readonly n_slopes: number;
  readonly intercept_median_y_minus_slope_median_x: number;
  readonly ci_gilbert_interpolated_M1_and_M2plus1: [number, number];
  readonly ci_rounded_ranks: [number, number];
}

function expectLine(input: Input, expected: Expected, one: ReferenceCase<unknown, unknown>): void {
  const times = input.x ?? input.t ?? [];
  const line = answerOf(theilSen(times, input.y, input.conf));
  expectNear(line.slope, expected.slope, one.tolerance, "slope");
  expect(line.pairs).toBe(expected.n_slopes);
  expectNear(line.intercept, expected.intercept_median_y_minus_slope_median_x, one.tolerance, "intercept");
  const between = answerOf(line.interval);
  expectNear(between.low, expected.ci_gilbert_interpolated_M1_and_M2plus1[0], one.tolerance, "low");
  expectNear(between.high, expected.ci_gilbert_interpolated_M1_and_M2plus1[1], one.tolerance, "high");
  const nearest = answerOf(answerOf(theilSen(times, input.y, input.conf, "nearest")).interval);
  expectNear(nearest.low, expected.ci_rounded_ranks[0], one.tolerance, "low, nearest rank");
  expectNear(nearest.high, expected.ci_rounded_ranks[1], one.tolerance, "high, nearest rank");
}

describe("reference", () => {
  it("Sen (1968), p. 1387: slope 4, interval 26/7 to 35/8 at 0.93 with ranks to the nearest", () => {
    const [one] = readReference<Input, Expected>("03c_trend", "sen_1968") as [ReferenceCase<Input, Expected>];
    expectLine(one.input, one.expected, one);
    const nearest = answerOf(answerOf(theilSen(one.input.x as number[], one.input.y, 0.93, "nearest")).interval);
    expect([nearest.low, nearest.high]).toEqual([26 / 7, 35 / 8]);
  });

  it("US EPA (2009), Example 17-6: uneven times and ties, slope 26.67, interval 20 to 35.71", () => {
    const [one] = readReference<Input, { theil_sen: Expected }>("03c_trend", "epa_17_6") as [
      ReferenceCase<Input, { theil_sen: Expected }>,
    ];
    expectLine(one.input, one.expected.theil_sen, one);
  });
});

describe("too little and bad input", () => {
  it("one time is too few of 2", () => {
    expect(theilSen([3, 3], [1, 2], 0.95)).toEqual({ kind: "too-few", have: 1, need: 2 });
    expect(theilSen([], [], 0.95)).toEqual({ kind: "too-few", have: 0, need: 2 });
  });

  it("four points have a slope but no 95 of 100: (6 - 1.96 x sqrt(26/3)) / 2 = 0.11 is no rank; six have one: (15 - 1.96 x sqrt(85/3)) / 2 = 2.28", () => {
    const line = answerOf(theilSen([1, 2, 3, 4], [2, 4, 6, 9], 0.95));
    expectNear(line.slope, (2 + 7 / 3) / 2, { rel: 1e-14 });
    expect(line.interval).toEqual({ kind: "too-few", have: 4, need: 6 });
    expect(answerOf(theilSen([1, 2, 3, 4, 5, 6], [2, 4, 6, 9, 10, 13], 0.95)).interval.kind).toBe("ok");
  });

  it("unequal lengths, NaN and a confidence of 95 are refused", () => {
    expect(() => theilSen([1, 2], [1, 2, 3], 0.95)).toThrow("times must have 3 values, got 2");
    expect(() => theilSen([1, Number.NaN], [1, 2], 0.95)).toThrow("times[1]");
    expect(() => theilSen([1, 2], [1, 2], 95)).toThrow("got 95");
  });
});

describe("invariance", () => {
  const points = fc.array(fc.tuple(fc.integer({ min: 0, max: 40 }), fc.integer({ min: -40, max: 40 })), {
    minLength: 6,
    maxLength: 20,
  });

  it("order is nothing; adding 5 a day adds 5 to slope and interval; scaling scales them", () => {
    fc.assert(
      fc.property(points, (list) => {
        const one = theilSen(
          list.map(([t]) => t),
          list.map(([, v]) => v),
          0.8,
        );
        if (one.kind !== "ok") return;
        const back = [...list].reverse();
        const scaled = answerOf(
          theilSen(
            back.map(([t]) => t),
            back.map(([, v]) => 2 * v),
            0.8,
          ),
        );
        expectNear(scaled.slope, 2 * one.value.slope, { abs: 1e-12 });
        expect(scaled.interval.kind).toBe(one.value.interval.kind);
        if (one.value.interval.kind === "ok") {
          expectNear(answerOf(scaled.interval).low, 2 * one.value.interval.value.low, { abs: 1e-12 });
        }
        const tilted = answerOf(
          theilSen(
            list.map(([t]) => t),
            list.map(([t, v]) => v + 5 * t),
            0.8,
          ),
        );
        expectNear(tilted.slope, one.value.slope + 5, { abs: 1e-12 });
      }),
    );
  });
});

describe("calibration", () => {
  it("n = 7: with all 5040 orders equally likely the 0.9 interval leaves the true slope 0 out 0.0690 of the time, 2 x P(S >= 13)", () => {
    let out = 0;
    let orders = 0;
    const place = (done: number[], left: number[]): void => {
      if (left.length === 0) {
        const { low, high } = answerOf(answerOf(theilSen([1, 2, 3, 4, 5, 6, 7], done, 0.9)).interval);
        if (low > 0 || high < 0) out++;
        orders++;
      }
      left.forEach((value, i) => {
        place([...done, value], left.toSpliced(i, 1));
      });
    };
    place([], [1, 2, 3, 4, 5, 6, 7]);
    expectNear(out / orders, 2 * 0.034523809523809526, { abs: 1e-12 });
  });
});
