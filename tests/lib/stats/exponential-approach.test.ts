import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type Approach,
  type ApproachBelief,
  type ApproachNode,
  exponentialApproach,
} from "@/lib/stats/exponential-approach";
import { lookData } from "@/lib/stats/look-data";
import type { Series } from "@/lib/stats/series";
import { tabulatedNormalCdf } from "@/lib/stats/tabulated-normal";
import { answerOf, expectNear, readReference } from "@/tests/reference/read-reference";
import { madeNoise, madeSeries, scaledNoise, transformed } from "./made-series";
import { monteCarloBand, seededNormals } from "./seeded-normals";

const noise = madeNoise([{ daySd: 0.7 }, { daySd: 1.2, correlation: 0.3 }], 0.5);
const belief: ApproachBelief = { scales: [1, 2, 4, 8], stepShare: 0.25, gainSd: 20 };
const found = (series: Series, model = noise, held = belief): Approach =>
  answerOf(exponentialApproach(lookData(series, model), held));
const single = (values: readonly number[]): Series => madeSeries(values.map((value) => [value]));
const likeliest = ({ nodes }: Approach): ApproachNode =>
  nodes.reduce((best, node) => (node.weight > best.weight ? node : best));
const levelAt = (node: ApproachNode, share: number): number => node.centreLevel + (share - node.centre) * node.gain;

/** One value a day given, with next to no known error and one day sd, so that least squares decides. */
function points(days: readonly number[], y: readonly number[], start: Series["start"] = null): Series {
  const base = madeSeries(
    y.map((value) => [value]),
    0,
  );
  return { ...base, start, groups: base.groups.map((group, i) => ({ ...group, day: days[i] as number })) };
}

describe("reference: at the published scale the integrals give the published curve", () => {
  const exact = madeNoise([{ daySd: 1 }], 1e-6);

  it("NIST StRD Misra1a (certified), y = b1 (1 - exp(-b2 x)), old level held at 0: gain 238.942 to 8 digits", () => {
    const [one] = readReference<{ x: number[]; y: number[] }, { b: [number, number] }>(
      "03b_nonlinear_nist",
      "nist_nls_misra1a",
    );
    if (!one) throw new Error("no case");
    const [b1, b2] = one.expected.b;
    const days = [0, ...one.input.x.map((x) => Math.round(10 * x))];
    const gap = (days.at(-1) as number) / (days.length - 1);
    const scale = 10 / b2 / gap;
    const held = { scales: [scale / 1.3, scale, scale * 1.3], stepShare: 1e-9, gainSd: 1e7 };
    const node = likeliest(found(points(days, [0, ...one.input.y], { mean: 0, sd: 1e-7 }), exact, held));
    expect([node.clock, node.scale]).toEqual(["days", scale]);
    expectNear(node.gain, b1, { rel: 1e-8 }, "gain");
    expectNear(levelAt(node, 0), 0, { zero_abs: 1e-6 }, "old level");
  });

  it("R 4.2.2, nls(SSasymp) on Loblolly from the first age on: asymptote 94.1282 and height at age 3", () => {
    const [one] = readReference<{ x: number[]; y: number[] }, { b: [number, number, number] }>(
      "03d_trend_regression",
      "loblolly",
    );
    if (!one) throw new Error("no case");
    const [asymptote, atZero, logRate] = one.expected.b;
    const rate = Math.exp(logRate);
    const { x, y } = one.input;
    const gap = ((x.at(-1) as number) - (x[0] as number)) / (x.length - 1);
    const held = { scales: [1 / rate / gap], stepShare: 1e-9, gainSd: 1e7 };
    const { nodes } = found(points(x, y), exact, held);
    const node = nodes.find(({ clock, since }) => clock === "days" && since === x.length - 1);
    if (node === undefined) throw new Error("no approach by days from the first group on");
    expectNear(levelAt(node, 1), asymptote, { rel: 1e-6 }, "asymptote");
    expectNear(levelAt(node, 0), asymptote + (atZero - asymptote) * Math.exp(-3 * rate), { rel: 1e-6 }, "first height");
  });
});

describe("too little and bad input", () => {
  it("three groups are too few of 4", () => {
    expect(exponentialApproach(lookData(single([1, 2, 3]), noise), belief)).toEqual({
      kind: "too-few",
      have: 3,
      need: 4,
    });
  });

  it.each([
    [{ scales: [] }, "needs a scale"],
    [{ scales: [1, 0] }, "scale must be above 0"],
    [{ gainSd: Number.NaN }, "gainSd must be above 0"],
    [{ stepShare: 1 }, "stepShare must lie between 0 and 1"],
  ])("refuses %j", (change, message) => {
    expect(() => exponentialApproach(lookData(single([1, 2, 3, 4]), noise), { ...belief, ...change })).toThrow(message);
  });

  it("values far apart, equal values and groups of one day give finite nodes whose weights sum to 1", () => {
    for (const series of [single([0, 0, 3e5, 3e5, 3e5]), single([2, 2, 2, 2]), points([5, 5, 5, 5], [1, 2, 3, 4])]) {
      const { nodes, gapDays } = found(series);
      expect(gapDays).toBeGreaterThan(0);
      for (const node of nodes)
        for (const value of Object.values(node)) expect(typeof value === "string" || Number.isFinite(value)).toBe(true);
      expectNear(
        nodes.reduce((sum, node) => sum + node.weight, 0),
        1,
        { abs: 1e-12 },
      );
    }
  });
});

describe("invariance", () => {
  const curve = Array.from({ length: 14 }, (_, i) => (i <= 4 ? 3 : 3 + 40 * -Math.expm1(-(i - 4) / 4)));

  it("a curve without noise, start after group 4, scale 4, gain 40, gives itself back", () => {
    const node = likeliest(found(single(curve), madeNoise([{ daySd: 0.05 }], 0.05)));
    expect([node.scale, node.since]).toEqual([4, 9]);
    expectNear(levelAt(node, 0), 3, { abs: 0.5 });
    expectNear(levelAt(node, 1), 43, { abs: 0.5 });
  });

  it("a step of 30 is one to more than 99 of 100, and its level stays where it is", () => {
    const { nodes } = found(single([0, 0, 0, 0, 0, 0, 30, 30, 30, 30, 30, 30]));
    const steps = nodes.filter(({ scale }) => scale === 0);
    expect(steps.reduce((sum, { weight }) => sum + weight, 0)).toBeGreaterThan(0.99);
    expectNear(levelAt(likeliest({ nodes, gapDays: 7 }), 1), 30, { abs: 0.3 });
  });

  it("a shift and a scale of the unit move levels and gains along and leave the weights", () => {
    const wobble = curve.map((value, i) => value + ((i * 7) % 5) / 3);
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 20, noNaN: true }),
        fc.double({ min: -100, max: 100, noNaN: true }),
        (by, shift) => {
          const plain = found(single(wobble));
          const moved = found(transformed(single(wobble), by, shift), scaledNoise(noise, by));
          expect(moved.nodes.length).toBe(plain.nodes.length);
          plain.nodes.forEach((node, i) => {
            const other = moved.nodes[i] as ApproachNode;
            expectNear(other.weight, node.weight, { rel: 1e-6, abs: 1e-9 }, "weight");
            expectNear(levelAt(other, 1), by * levelAt(node, 1) + shift, { rel: 1e-6, abs: 1e-6 }, "end");
          });
        },
      ),
      { numRuns: 20 },
    );
  });

  it("sees used groups alone, and answers the same twice", () => {
    const series = single(curve);
    const groups = series.groups.toSpliced(6, 0, { ...(series.groups[6] as Series["groups"][number]), used: false });
    expect(found({ ...series, groups })).toEqual(found(series));
  });
});

describe("calibration", () => {
  it("gain and scale drawn as believed, 14 groups: the 80 of 100 of the end level holds in .8 of 160 series within .13", () => {
    const normal = seededNormals(71);
    const runs = 160;
    const model = madeNoise([{ daySd: 1 }], 0.5);
    const unit = Math.hypot(1, 0.5, 0.5);
    const held: ApproachBelief = { scales: [1, 2, 4], stepShare: 0.25, gainSd: 6 };
    let inside = 0;
    for (let run = 0; run < runs; run++) {
      const scale = [0, 1, 2, 4][run % 4] as number;
      const start = (run >> 2) % 12;
      const gain = 6 * unit * normal();
      const series = single(
        Array.from({ length: 14 }, (_, i) => {
          const share = i <= start ? 0 : scale === 0 ? 1 : -Math.expm1((start - i) / scale);
          return gain * share + unit * normal();
        }),
      );
      const below = endBelow(found(series, model, held), gain);
      if (below > 0.1 && below < 0.9) inside++;
    }
    expectNear(inside / runs, 0.8, { abs: monteCarloBand(0.8, runs) });
  });
});

/** Probability that the level at the end of the gain lies below a value. */
function endBelow({ nodes }: Approach, value: number): number {
  return nodes.reduce((sum, node) => {
    const off = 1 - node.centre;
    const sd = Math.sqrt(node.centreVariance + off * off * node.gainVariance);
    return sum + node.weight * tabulatedNormalCdf((value - levelAt(node, 1)) / sd);
  }, 0);
}
