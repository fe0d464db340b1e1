import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { welchTest } from "@/lib/stats/welch-test";
import { answerOf, expectNear, readReference } from "@/tests/reference/read-reference";
import { monteCarloBand, seededNormals } from "./seeded-normals";

interface Input {
  readonly x: number[];
  readonly y: number[];
}

describe("reference", () => {
  it("Student (1908), ten sleepers by two drugs, as R prints it: t -1.8608 on 17.776 degrees, p 0.07939", () => {
    const [one] = readReference<Input, { t: number; df: number; p: number; ci: [number, number] }>(
      "06b_two_group_tests",
      "sleep_welch",
    );
    if (!one) throw new Error("missing");
    const got = answerOf(welchTest(one.input.x, one.input.y, 0.95));
    expectNear(got.t, one.expected.t, one.tolerance, "t");
    expectNear(got.degrees, one.expected.df, one.tolerance, "degrees");
    expectNear(got.p, one.expected.p, one.tolerance, "p");
    expectNear(got.low, one.expected.ci[0], one.tolerance, "low");
    expectNear(got.high, one.expected.ci[1], one.tolerance, "high");
    expect([got.t.toFixed(4), got.p.toFixed(5)]).toEqual(["-1.8608", "0.07939"]);
  });
});

describe("too little and bad input", () => {
  it("a list of one is 1 of 2, an empty one 0 of 2; two constants are 0 of 1 that spread", () => {
    expect(welchTest([1], [1, 2], 0.95)).toEqual({ kind: "too-few", have: 1, need: 2 });
    expect(welchTest([1, 2], [], 0.95)).toEqual({ kind: "too-few", have: 0, need: 2 });
    expect(welchTest([1, 1], [2, 2], 0.95)).toEqual({ kind: "too-few", have: 0, need: 1 });
  });
  it("one constant list leaves the other's degrees: 3 - 1 = 2", () => {
    expectNear(answerOf(welchTest([1, 2, 3], [5, 5], 0.95)).degrees, 2, { rel: 1e-14 });
  });
  it("NaN and a confidence of 95 are refused", () => {
    expect(() => welchTest([1, Number.NaN], [1, 2], 0.95)).toThrow("first[1]");
    expect(() => welchTest([1, 2], [1, Number.NaN], 0.95)).toThrow("second[1]");
    expect(() => welchTest([1, 2], [1, 3], 95)).toThrow("got 95");
  });
});

describe("invariance", () => {
  const list = fc.array(fc.integer({ min: -90, max: 90 }), { minLength: 2, maxLength: 9 });
  it("exchange turns the sign; shift and scale leave t, degrees and p alone; degrees lie between the least and all", () => {
    fc.assert(
      fc.property(list, list, (a, b) => {
        const before = welchTest(a, b, 0.9);
        const move = (values: number[]) => values.map((value) => 3 * value + 200).reverse();
        const after = welchTest(move(b), move(a), 0.9);
        expect(after.kind).toBe(before.kind);
        if (before.kind !== "ok") return;
        const turned = answerOf(after);
        expectNear(turned.t, -before.value.t, { rel: 1e-10, abs: 1e-10 });
        expectNear(turned.p, before.value.p, { rel: 1e-8, abs: 1e-12 });
        expectNear(turned.low, -3 * before.value.high, { rel: 1e-9, abs: 1e-9 });
        expect(before.value.degrees).toBeGreaterThan(Math.min(a.length, b.length) - 1 - 1e-9);
        expect(before.value.degrees).toBeLessThan(a.length + b.length - 2 + 1e-9);
      }),
    );
  });
});

describe("calibration", () => {
  it("4000 draws of 8 with sd 1 and 20 with sd 3: 5 of 100 below 0.05 and 95 of 100 intervals hold, within 4 x 0.0034", () => {
    const normal = seededNormals(1947);
    const runs = 4000;
    let alarms = 0;
    let held = 0;
    for (let run = 0; run < runs; run++) {
      const a = Array.from({ length: 8 }, normal);
      const b = Array.from({ length: 20 }, () => 3 * normal());
      const got = answerOf(welchTest(a, b, 0.95));
      if (got.p < 0.05) alarms++;
      if (got.low < 0 && got.high > 0) held++;
    }
    expectNear(alarms / runs, 0.05, { abs: monteCarloBand(0.05, runs) });
    expect(alarms + held).toBe(runs);
  });
});
