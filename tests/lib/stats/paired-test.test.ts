import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { pairedTest } from "@/lib/stats/paired-test";
import { answerOf, expectNear, readReference } from "@/tests/reference/read-reference";
import { monteCarloBand, seededNormals } from "./seeded-normals";

describe("reference", () => {
  it("Student (1908), ten sleepers, drug by drug, as R prints it: t -4.0621 on 9 degrees, p 0.002833", () => {
    const [one] = readReference<{ x: number[]; y: number[] }, { t: number; df: number; p: number; ci: number[] }>(
      "06b_two_group_tests",
      "sleep_paired",
    );
    if (!one) throw new Error("missing");
    const got = answerOf(
      pairedTest(
        one.input.x.map((value, i) => value - (one.input.y[i] as number)),
        0.95,
      ),
    );
    expectNear(got.t, one.expected.t, one.tolerance, "t");
    expect(got.degrees).toBe(one.expected.df);
    expectNear(got.p, one.expected.p, one.tolerance, "p");
    expectNear(got.low, one.expected.ci[0] as number, one.tolerance, "low");
    expectNear(got.high, one.expected.ci[1] as number, one.tolerance, "high");
  });
});

describe("too little and bad input", () => {
  it("one difference is 1 of 2; equal ones are 1 of 2 different", () => {
    expect(pairedTest([1], 0.95)).toEqual({ kind: "too-few", have: 1, need: 2 });
    expect(pairedTest([0.1, 0.1, 0.1], 0.95)).toEqual({ kind: "too-few", have: 1, need: 2 });
  });
  it("NaN and a confidence of 95 are refused", () => {
    expect(() => pairedTest([1, Number.NaN], 0.95)).toThrow("differences[1]");
    expect(() => pairedTest([1, 2], 95)).toThrow("got 95");
  });
});

describe("invariance", () => {
  it("order is nothing; -4 times the differences turns t and quadruples the interval", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -90, max: 90 }), { minLength: 2, maxLength: 9 }), (list) => {
        const before = pairedTest(list, 0.9);
        const after = pairedTest(
          [...list].reverse().map((value) => -4 * value),
          0.9,
        );
        expect(after.kind).toBe(before.kind);
        if (before.kind !== "ok") return;
        expectNear(answerOf(after).t, -before.value.t, { rel: 1e-10, abs: 1e-10 });
        expectNear(answerOf(after).low, -4 * before.value.high, { rel: 1e-10, abs: 1e-10 });
      }),
    );
  });
});

describe("calibration", () => {
  it("4000 draws of 5 about 2: 95 of 100 intervals hold 2, within 4 x 0.0034", () => {
    const normal = seededNormals(1908);
    const runs = 4000;
    let held = 0;
    for (let run = 0; run < runs; run++) {
      const got = answerOf(
        pairedTest(
          Array.from({ length: 5 }, () => 2 + 3 * normal()),
          0.95,
        ),
      );
      if (got.low < 2 && got.high > 2) held++;
    }
    expectNear(held / runs, 0.95, { abs: monteCarloBand(0.95, runs) });
  });
});
