import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type MannKendall, mannKendall } from "@/lib/stats/mann-kendall";
import { answerOf, expectNear, type ReferenceCase, readReference } from "@/tests/reference/read-reference";

interface Input {
  readonly x?: number[];
  readonly t?: number[];
  readonly y: number[];
}
interface Expected {
  readonly S: number;
  readonly varS: number;
  readonly z_continuity_corrected: number;
  readonly p_two_sided_normal: number;
  readonly tau_a: number;
  readonly tau_b: number;
  readonly p_two_sided_exact?: number;
  readonly p_two_sided_exact_permutation?: number;
}

function only(id: string): ReferenceCase<Input, Expected> {
  return readReference<Input, Expected>("03c_trend", id)[0] as ReferenceCase<Input, Expected>;
}

function testOf({ x, t, y }: Input): MannKendall {
  return answerOf(mannKendall(x ?? t ?? y.map((_, i) => i), y));
}

function expectTest(got: MannKendall, expected: Expected, one: ReferenceCase<unknown, unknown>): void {
  expect(got.s).toBe(expected.S);
  expectNear(got.variance, expected.varS, one.tolerance, "variance");
  expectNear(got.z, expected.z_continuity_corrected, one.tolerance, "z");
  expectNear(got.normalP, expected.p_two_sided_normal, one.tolerance, "p, normal");
  expectNear(got.tauA, expected.tau_a, one.tolerance, "tau a");
  expectNear(answerOf(got.tauB), expected.tau_b, one.tolerance, "tau b");
}

describe("reference", () => {
  it("Hollander & Wolfe (1973), p. 185: nine readings, S = 16, exact p = 0.1194", () => {
    const one = only("hollander_wolfe_tuna");
    const got = testOf(one.input);
    expectTest(got, one.expected, one);
    expect(got.p.kind).toBe("exact");
    expectNear(got.p.value, one.expected.p_two_sided_exact as number, one.tolerance, "p, exact");
    expectNear(got.p.value, 0.1194, { abs: one.tolerance.published_abs as number }, "p, printed");
  });

  it("US EPA (2009), Example 17-6: uneven times and ties, S = 194, z = 5.107322", () => {
    const one = only("epa_17_6_sulfate");
    expectTest(testOf(one.input), (one.expected as unknown as { mk: Expected }).mk, one);
  });

  it("the Nile 1871 to 1970 (Cobb 1978): S = -1387, p = 3.66e-5; above 50 points the p is the normal one", () => {
    const one = only("nile_mk");
    const got = testOf(one.input);
    expectTest(got, one.expected, one);
    expect(got.p).toEqual({ kind: "normal", value: got.normalP });
  });

  it("3, 3, 4, 4, 4, 6, 7: exact p = 0.00476 by all 5040 orders, where the normal one says 0.0111", () => {
    const one = only("short_ties");
    const got = testOf(one.input);
    expectTest(got, one.expected, one);
    expectNear(got.p.value, one.expected.p_two_sided_exact_permutation as number, one.tolerance, "p, exact");
  });

  it("six equal values: S = 0, variance 0, p = 1, and no tau b", () => {
    const got = testOf(only("all_equal").input);
    expect([got.s, got.variance, got.normalP, got.p.value]).toEqual([0, 0, 1, 1]);
    expect(got.tauB).toEqual({ kind: "too-few", have: 1, need: 2 });
  });
});

describe("too little and bad input", () => {
  it("two points are 2 of 3; three at one time are 1 of 2 times", () => {
    expect(mannKendall([1, 2], [1, 2])).toEqual({ kind: "too-few", have: 2, need: 3 });
    expect(mannKendall([1, 1, 1], [1, 2, 3])).toEqual({ kind: "too-few", have: 1, need: 2 });
  });

  it("unequal lengths and NaN are refused", () => {
    expect(() => mannKendall([1, 2], [1, 2, 3])).toThrow("times must have 3 values, got 2");
    expect(() => mannKendall([1, 2, 3], [1, Number.NaN, 3])).toThrow("values[1]");
  });
});

describe("invariance", () => {
  const points = fc.array(fc.tuple(fc.integer({ min: 0, max: 9 }), fc.integer({ min: 0, max: 9 })), {
    minLength: 3,
    maxLength: 12,
  });

  it("order of points and any rising change of scale are nothing; mirroring the values turns S and z round", () => {
    fc.assert(
      fc.property(points, (list) => {
        const one = mannKendall(
          list.map(([t]) => t),
          list.map(([, v]) => v),
        );
        if (one.kind !== "ok") return;
        const back = [...list].reverse();
        const risen = answerOf(
          mannKendall(
            back.map(([t]) => t ** 3),
            back.map(([, v]) => Math.exp(v)),
          ),
        );
        expect([risen.s, risen.z, risen.tauA]).toEqual([one.value.s, one.value.z, one.value.tauA]);
        expectNear(risen.p.value, one.value.p.value, { rel: 1e-12 });
        const mirrored = answerOf(
          mannKendall(
            list.map(([t]) => t),
            list.map(([, v]) => -v),
          ),
        );
        expect([mirrored.s + one.value.s, mirrored.z + one.value.z]).toEqual([0, 0]);
        expectNear(mirrored.p.value, one.value.p.value, { rel: 1e-12 });
      }),
    );
  });

  it("times and values may change places", () => {
    fc.assert(
      fc.property(points, (list) => {
        const one = mannKendall(
          list.map(([t]) => t),
          list.map(([, v]) => v),
        );
        const other = mannKendall(
          list.map(([, v]) => v),
          list.map(([t]) => t),
        );
        if (one.kind !== "ok" || other.kind !== "ok") return;
        expect(other.value.s).toBe(one.value.s);
        expectNear(other.value.variance, one.value.variance, { rel: 1e-12, abs: 1e-12 });
      }),
    );
  });
});

describe("calibration", () => {
  it("n = 6: of all 720 orders exactly 40 have an exact p of 0.0556 or less, as 2 x P(S >= 11) = 2 x 20/720 says", () => {
    let small = 0;
    const place = (done: number[], left: number[]): void => {
      if (left.length === 0 && answerOf(mannKendall([1, 2, 3, 4, 5, 6], done)).p.value <= 0.0556) small++;
      left.forEach((value, i) => {
        place([...done, value], left.toSpliced(i, 1));
      });
    };
    place([], [1, 2, 3, 4, 5, 6]);
    expect(small).toBe(40);
  });
});
