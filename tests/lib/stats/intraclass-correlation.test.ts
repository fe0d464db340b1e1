import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { intraclassCorrelation } from "@/lib/stats/intraclass-correlation";
import { answerOf, expectAllNear, expectNear, readReference } from "@/tests/reference/read-reference";
import { monteCarloBand, seededNormals } from "./seeded-normals";

interface Expected {
  readonly icc: number[];
  readonly lower95: number[];
  readonly upper95: number[];
  readonly icc_single_ci95: [number, number];
}

describe("reference", () => {
  it("Shrout & Fleiss (1979), Table 4: 0.17, 0.29 and 0.71; intervals of R psych 2.2.9", () => {
    const [one] = readReference<{ rows_targets_cols_judges: number[][] }, Expected>("01c_reliability", "shrout_fleiss");
    if (!one) throw new Error("missing");
    const got = answerOf(intraclassCorrelation(one.input.rows_targets_cols_judges, 0.95));
    const forms = [got.oneWay, got.twoWayRandom, got.twoWayFixed];
    const values = forms.map((form) => form.value);
    const part = (pick: "low" | "high") => forms.map((form) => answerOf(form.interval)[pick]);
    expectAllNear(values, one.expected.icc.slice(0, 3), one.tolerance, "value");
    expectAllNear(part("low"), one.expected.lower95.slice(0, 3), one.tolerance, "low");
    expectAllNear(part("high"), one.expected.upper95.slice(0, 3), one.tolerance, "high");
    expect(values.map((value) => value.toFixed(2))).toEqual(["0.17", "0.29", "0.71"]);
  });
  it("Bland & Altman (1986), two readings of 17 people: ICC(1,1) 0.983, 0.955 to 0.994", () => {
    const [one] = readReference<{ first: number[]; second: number[] }, Expected & { icc_single: number }>(
      "01c_reliability",
      "pefr_repeatability",
    );
    if (!one) throw new Error("missing");
    const table = one.input.first.map((value, i) => [value, one.input.second[i] as number]);
    const { value, interval } = answerOf(intraclassCorrelation(table, 0.95)).oneWay;
    const { low, high } = answerOf(interval);
    expectAllNear([value, low, high], [one.expected.icc_single, ...one.expected.icc_single_ci95], one.tolerance);
  });
});

describe("too little and bad input", () => {
  it("one target is 1 of 2, one judge 1 of 2, none 0 of 2", () => {
    expect(intraclassCorrelation([[1, 2]], 0.95)).toEqual({ kind: "too-few", have: 1, need: 2 });
    expect(intraclassCorrelation([[1], [2]], 0.95)).toEqual({ kind: "too-few", have: 1, need: 2 });
    expect(intraclassCorrelation([], 0.95)).toEqual({ kind: "too-few", have: 0, need: 2 });
  });
  it("judges that differ by 0.1 everywhere leave no residual: 0 of 1", () => {
    const table = [0.3, 1.7, 2.9].map((value) => [value, value + 0.1]);
    expect(intraclassCorrelation(table, 0.95)).toEqual({ kind: "too-few", have: 0, need: 1 });
  });
  it("targets with one mean, 0 0, 0 0 and 3 -3: ICC(2,1) below 0 has no degrees of freedom left for an interval", () => {
    const table = [
      [0, 0],
      [0, 0],
      [3, -3],
    ];
    const { twoWayRandom } = answerOf(intraclassCorrelation(table, 0.95));
    expect(twoWayRandom.interval).toEqual({ kind: "too-few", have: 0, need: 1 });
  });
  it("uneven rows, NaN and a confidence of 95 are refused", () => {
    expect(() => intraclassCorrelation([[1, 2], [3]], 0.95)).toThrow("table[1] must have 2 values, got 1");
    expect(() =>
      intraclassCorrelation(
        [
          [1, 2],
          [3, Number.NaN],
        ],
        0.95,
      ),
    ).toThrow("table[1][1]");
    expect(() => intraclassCorrelation([[1, 2]], 95)).toThrow("got 95");
  });
});

describe("invariance", () => {
  const table = fc.array(fc.tuple(fc.integer({ max: 99, min: -99 }), fc.integer({ max: 99, min: -99 })), {
    minLength: 3,
    maxLength: 9,
  });
  it("shift, scale and order leave all three alone; moving one judge leaves ICC(3,1) alone", () => {
    fc.assert(
      fc.property(table, (rows) => {
        const before = intraclassCorrelation(rows, 0.9);
        if (before.kind !== "ok") return;
        const moved = rows.map((row) => [...row].reverse().map((value) => 4 * value - 9)).reverse();
        const after = answerOf(intraclassCorrelation(moved, 0.9));
        for (const form of ["oneWay", "twoWayRandom", "twoWayFixed"] as const) {
          expectNear(after[form].value, before.value[form].value, { abs: 1e-8 }, form);
          const one = before.value[form].interval;
          const other = after[form].interval;
          if (one.kind !== "ok" || other.kind !== "ok") continue;
          expectNear(other.value.low, one.value.low, { rel: 1e-7, abs: 1e-7 }, `low, ${form}`);
          expectNear(other.value.high, one.value.high, { rel: 1e-7, abs: 1e-7 }, `high, ${form}`);
        }
        const biased = answerOf(
          intraclassCorrelation(
            rows.map(([a, b]) => [a, b + 30]),
            0.9,
          ),
        );
        expectNear(biased.twoWayFixed.value, before.value.twoWayFixed.value, { abs: 1e-8 });
      }),
    );
  });
});

describe("calibration", () => {
  it("2000 tables of 10 x 3, sds 2 and 1: 95 of 100 intervals of ICC(1,1) and ICC(3,1) hold 4/5, within 4 x 0.0049", () => {
    const normal = seededNormals(77);
    const runs = 2000;
    let one = 0;
    let three = 0;
    for (let run = 0; run < runs; run++) {
      const table = Array.from({ length: 10 }, () => {
        const level = 2 * normal();
        return [level + normal(), level + normal(), level + normal()];
      });
      const got = answerOf(intraclassCorrelation(table, 0.95));
      const holds = ({ low, high }: { low: number; high: number }) => low < 0.8 && high > 0.8;
      if (holds(answerOf(got.oneWay.interval))) one++;
      if (holds(answerOf(got.twoWayFixed.interval))) three++;
    }
    expectNear(one / runs, 0.95, { abs: monteCarloBand(0.95, runs) });
    expectNear(three / runs, 0.95, { abs: monteCarloBand(0.95, runs) });
  });
});
