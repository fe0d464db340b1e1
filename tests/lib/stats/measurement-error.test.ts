import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { measurementError } from "@/lib/stats/measurement-error";
import { answerOf, expectNear, readReference } from "@/tests/reference/read-reference";
import { monteCarloBand, seededNormals } from "./seeded-normals";

interface Error95 {
  readonly sem: number;
  readonly mdc95: number;
  readonly sem_ci95: [number, number];
}

function expectError(readings: number[][], expected: Error95, tolerance: { rel?: number }): void {
  const got = answerOf(measurementError(readings, 0.95));
  expectNear(got.standardError, expected.sem, tolerance, "error");
  expectNear(got.low, expected.sem_ci95[0], tolerance, "low");
  expectNear(got.high, expected.sem_ci95[1], tolerance, "high");
  expectNear(got.detectableChange95, expected.mdc95, tolerance, "detectable change");
}

describe("reference", () => {
  it("Bland & Altman (1986), large meter read twice on 17 people: 15.3 (printed in 1999)", () => {
    const [one] = readReference<{ first: number[]; second: number[] }, Error95>("01c_reliability", "pefr_repeat");
    if (!one) throw new Error("missing");
    const readings = one.input.first.map((value, i) => [value, one.input.second[i] as number]);
    expectError(readings, one.expected, one.tolerance);
    expect(answerOf(measurementError(readings, 0.95)).degrees).toBe(17);
  });
  it("Shrout & Fleiss (1979), six targets read four times: sqrt 6.264 = 2.503", () => {
    const [one] = readReference<{ rows_targets_cols_judges: number[][] }, { oneway: Error95 }>(
      "01c_reliability",
      "shrout_fleiss",
    );
    if (!one) throw new Error("missing");
    expectError(one.input.rows_targets_cols_judges, one.expected.oneway, one.tolerance);
  });
  it("Rail without five rows, unequal numbers: sqrt(190.17 / 7) = 5.212", () => {
    const [one] = readReference<{ group: string[]; y: number[] }, { anova: Error95 }>(
      "01c_reliability",
      "rail_unbalanced",
    );
    if (!one) throw new Error("missing");
    const { group, y } = one.input;
    const readings = [...new Set(group)].map((label) => y.filter((_, i) => group[i] === label));
    expectError(readings, one.expected.anova, { rel: 1e-10 });
  });
});

describe("too little and bad input", () => {
  it("things read once are 1 of 2; none at all 0 of 2; equal re-readings 0 of 1 that differ", () => {
    expect(measurementError([[1], [2]], 0.95)).toEqual({ kind: "too-few", have: 1, need: 2 });
    expect(measurementError([], 0.95)).toEqual({ kind: "too-few", have: 0, need: 2 });
    expect(measurementError([[4, 4], [5]], 0.95)).toEqual({ kind: "too-few", have: 0, need: 1 });
  });
  it("NaN and a confidence of 95 are refused", () => {
    expect(() => measurementError([[1, Number.NaN]], 0.95)).toThrow("readings[0][1]");
    expect(() => measurementError([[1, 2]], 95)).toThrow("got 95");
  });
});

describe("invariance", () => {
  const readings = fc.array(fc.array(fc.integer({ min: -50, max: 50 }), { minLength: 1, maxLength: 4 }), {
    minLength: 2,
    maxLength: 8,
  });
  it("each thing's own level, order and things read once change nothing; doubling doubles", () => {
    fc.assert(
      fc.property(readings, (lists) => {
        const before = measurementError(lists, 0.9);
        const moved = lists.map((list, i) => [...list].reverse().map((value) => 2 * value + 100 * i));
        const after = measurementError([...moved, [1234], []].reverse(), 0.9);
        expect(after.kind).toBe(before.kind);
        if (before.kind !== "ok") return;
        expectNear(answerOf(after).standardError, 2 * before.value.standardError, { rel: 1e-10 });
        expectNear(answerOf(after).high, 2 * before.value.high, { rel: 1e-10 });
      }),
    );
  });
});

describe("calibration", () => {
  it("4000 draws of 10 things read twice, sd 3: 95 of 100 intervals hold 3, within 4 x 0.0034", () => {
    const normal = seededNormals(1986);
    const runs = 4000;
    let held = 0;
    for (let run = 0; run < runs; run++) {
      const { low, high } = answerOf(
        measurementError(
          Array.from({ length: 10 }, () => [3 * normal(), 3 * normal()]),
          0.95,
        ),
      );
      if (low < 3 && high > 3) held++;
    }
    expectNear(held / runs, 0.95, { abs: monteCarloBand(0.95, runs) });
  });
});
