import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type EwmaSettings, ewmaChart } from "@/lib/stats/ewma-chart";
import { answerOf, expectAllNear, expectNear, readReference } from "@/tests/reference/read-reference";
import { seededNormals } from "./seeded-normals";

interface Input {
  readonly y: number[];
  readonly target: number;
  readonly s: number;
  readonly lambda: number;
  readonly k: number;
}
interface Expected {
  readonly ewma: number[];
  readonly ucl_asymptotic: number;
  readonly lcl_asymptotic: number;
}

const settings: EwmaSettings = { target: 0, sd: 1, weight: 0.2, limit: 3, limits: "growing" };

describe("reference: NIST/SEMATECH e-Handbook, 6.3.2.4", () => {
  const [one] = readReference<Input, Expected>("05a_charts_worked", "nist_6324") as [
    ReturnType<typeof readReference<Input, Expected>>[number],
  ];
  const { y, target, s, lambda, k } = one.input;
  const published = one.published as Expected;

  // The lower limit is 47.4116 unrounded, 47.4115 as remembered.
  it("20 values, weight 0.3: averages and settled limits 47.41 to 52.59, as printed", () => {
    const chart = answerOf(ewmaChart(y, { target, sd: s, weight: lambda, limit: k, limits: "settled" }));
    expectAllNear(chart.averages, one.expected.ewma, one.tolerance, "average");
    expectAllNear(chart.averages, published.ewma, { abs: 0.006 }, "printed average");
    expectNear(chart.high[0] as number, one.expected.ucl_asymptotic, one.tolerance, "high");
    expectNear(chart.low[19] as number, one.expected.lcl_asymptotic, one.tolerance, "low");
    expectNear(chart.high[0] as number, published.ucl_asymptotic, { abs: 5e-5 }, "printed high");
    expectNear(chart.low[0] as number, published.lcl_asymptotic, { abs: 1.5e-4 }, "printed low");
    expect(chart.signal).toEqual({ kind: "none" });
  });

  it("the first growing limit is that of one value, 3 x 2.0539 x 0.3 from 50; the last nears the settled one", () => {
    const chart = answerOf(ewmaChart(y, { target, sd: s, weight: lambda, limit: k, limits: "growing" }));
    expectNear(chart.high[0] as number, 50 + 3 * 2.0539 * 0.3, { rel: 1e-12 });
    expectNear(chart.high[19] as number, one.expected.ucl_asymptotic, { rel: 1e-6 });
  });
});

describe("too little and bad input", () => {
  it("no value is too few of 1", () => {
    expect(ewmaChart([], settings)).toEqual({ kind: "too-few", have: 0, need: 1 });
  });

  it("a weight of 0 or 2, an sd of 0, NaN among the values are refused", () => {
    expect(() => ewmaChart([1], { ...settings, weight: 0 })).toThrow("weight must lie above 0, to 1, got 0");
    expect(() => ewmaChart([1], { ...settings, weight: 2 })).toThrow("got 2");
    expect(() => ewmaChart([1], { ...settings, sd: 0 })).toThrow("sd must be above 0 and finite, got 0");
    expect(() => ewmaChart([1, Number.NaN], settings)).toThrow("values[1]");
  });
});

describe("invariance", () => {
  const lists = fc.array(fc.integer({ min: -6, max: 6 }), { minLength: 1, maxLength: 30 });

  it("a shift and a scale of values, target and sd move along and leave the signal; a mirror turns its side", () => {
    fc.assert(
      fc.property(lists, (values) => {
        const chart = answerOf(ewmaChart(values, settings));
        const moved = answerOf(
          ewmaChart(
            values.map((value) => -4 * value + 10),
            { ...settings, target: 10, sd: 4 },
          ),
        );
        expectAllNear(
          moved.averages,
          chart.averages.map((value) => -4 * value + 10),
          { abs: 1e-12 },
        );
        expect(moved.signal.kind).toBe(chart.signal.kind);
        if (chart.signal.kind === "signal" && moved.signal.kind === "signal") {
          expect(moved.signal.index).toBe(chart.signal.index);
          expect(moved.signal.side).not.toBe(chart.signal.side);
        }
      }),
    );
  });

  it("the average is the weighted sum by definition; a chart of the first values is the start of the whole one", () => {
    fc.assert(
      fc.property(lists, (values) => {
        const { averages } = answerOf(ewmaChart(values, settings));
        const last = values.length - 1;
        const sum = values.reduce((total, value, i) => total + 0.2 * 0.8 ** (last - i) * value, 0);
        expectNear(averages[last] as number, sum, { abs: 1e-12 });
        const half = values.slice(0, Math.ceil(values.length / 2));
        expect(answerOf(ewmaChart(half, settings)).averages).toEqual(averages.slice(0, half.length));
      }),
    );
  });
});

describe("calibration", () => {
  it("4000 series: the sd of the second and the tenth average is a third of the limits' reach, within 4 / sqrt(8000)", () => {
    const normal = seededNormals(2);
    const runs = 4000;
    const squares = [0, 0];
    const places = [1, 9];
    let reach: readonly number[] = [];
    for (let run = 0; run < runs; run++) {
      const chart = answerOf(ewmaChart(Array.from({ length: 10 }, normal), settings));
      reach = chart.high;
      places.forEach((place, i) => {
        squares[i] = (squares[i] as number) + (chart.averages[place] as number) ** 2;
      });
    }
    places.forEach((place, i) => {
      const sd = Math.sqrt((squares[i] as number) / runs);
      expectNear(sd, (reach[place] as number) / 3, { rel: 4 / Math.sqrt(2 * runs) }, `average ${place}`);
    });
  });
});
