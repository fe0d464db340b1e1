import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type SegmentBelief, segmentEvidence } from "@/lib/stats/segment-evidence";
import { type SegmentationPosterior, segmentationPosterior } from "@/lib/stats/segmentation-posterior";
import { answerOf, expectAllNear, expectNear, readReference } from "@/tests/reference/read-reference";
import { monteCarloBand, seededChances, seededNormals } from "./seeded-normals";

interface Input {
  readonly y: number[];
  readonly p: number;
  readonly m0: number;
  readonly k0: number;
  readonly a0: number;
  readonly b0: number;
  readonly tau?: number;
  readonly sigma?: number;
}
interface Expected {
  readonly log_evidence: number;
  readonly p_change_after_index: number[];
  readonly p_number_of_changes_0_to_5: number[];
  readonly map_changes_after_index: number[];
  readonly map_probability: number;
  readonly p_current_segment_length_1_to_n: number[];
}

function beliefOf({ m0, k0, a0, b0, tau, sigma }: Input): SegmentBelief {
  return tau !== undefined && sigma !== undefined
    ? { kind: "known-sd", mean: m0, levelSd: tau, sd: sigma }
    : { kind: "normal-gamma", mean: m0, strength: k0, shape: a0, rate: b0 };
}

/** The same, with every one of the 2^(n-1) cuts written out. */
function byEnumeration(values: readonly number[], p: number, belief: SegmentBelief): SegmentationPosterior {
  const n = values.length;
  const changeAfter = new Array<number>(n - 1).fill(0);
  const changes = new Array<number>(n).fill(0);
  const lastLength = new Array<number>(n).fill(0);
  let total = 0;
  let best = { starts: [] as number[], weight: 0 };
  for (let cut = 0; cut < 2 ** (n - 1); cut++) {
    const starts = Array.from({ length: n - 1 }, (_, i) => i + 1).filter((i) => (cut >> (i - 1)) & 1);
    const ends = [...starts, n];
    const log = ends.reduce(
      (sum, end, i) => sum + segmentEvidence(values.slice(i === 0 ? 0 : starts[i - 1], end), belief),
      0,
    );
    const weight = Math.exp(log) * p ** starts.length * (1 - p) ** (n - 1 - starts.length);
    total += weight;
    for (const start of starts) changeAfter[start - 1] = (changeAfter[start - 1] as number) + weight;
    changes[starts.length] = (changes[starts.length] as number) + weight;
    const last = n - (starts.at(-1) ?? 0) - 1;
    lastLength[last] = (lastLength[last] as number) + weight;
    if (weight > best.weight) best = { starts, weight };
  }
  const share = (weights: number[]) => weights.map((weight) => weight / total);
  return {
    logEvidence: Math.log(total),
    changeAfter: share(changeAfter),
    changes: share(changes),
    lastLength: share(lastLength),
    likeliest: { starts: best.starts, chance: best.weight / total },
  };
}

describe("reference: enumeration of all segmentations in Python", () => {
  it.each(readReference<Input, Expected>("04d_bayes_segmentation"))("$id: every chance within 1e-9", (one) => {
    const got = answerOf(segmentationPosterior(one.input.y, one.input.p, beliefOf(one.input)));
    const { expected, tolerance } = one;
    expectNear(got.logEvidence, expected.log_evidence, tolerance, "log evidence");
    expectAllNear(got.changeAfter, expected.p_change_after_index, tolerance, "change after");
    expectAllNear(got.changes.slice(0, 6), expected.p_number_of_changes_0_to_5, tolerance, "number of changes");
    expectAllNear(got.lastLength, expected.p_current_segment_length_1_to_n, tolerance, "last length");
    expect(got.likeliest.starts).toEqual(expected.map_changes_after_index);
    expectNear(got.likeliest.chance, expected.map_probability, tolerance, "likeliest");
  });
});

describe("too little and bad input", () => {
  const belief: SegmentBelief = { kind: "known-sd", mean: 0, levelSd: 1, sd: 1 };

  it("no value is too few of 1; one value is one stretch for certain", () => {
    expect(segmentationPosterior([], 0.1, belief)).toEqual({ kind: "too-few", have: 0, need: 1 });
    const one = answerOf(segmentationPosterior([0.3], 0.1, belief));
    expect([one.changeAfter, one.changes, one.lastLength]).toEqual([[], [1], [1]]);
    expect(one.likeliest).toEqual({ starts: [], chance: 1 });
  });

  it("NaN, a chance of 1 and a spread of 0 are refused", () => {
    expect(() => segmentationPosterior([Number.NaN], 0.1, belief)).toThrow("values[0]");
    expect(() => segmentationPosterior([1], 1, belief)).toThrow("changeChance must lie between 0 and 1, got 1");
    expect(() => segmentationPosterior([1], 0.1, { ...belief, sd: 0 })).toThrow("sd must be above 0");
  });
});

describe("invariance", () => {
  const list = fc.array(fc.double({ min: -3, max: 3, noNaN: true }), { minLength: 2, maxLength: 8 });
  const belief = fc.constantFrom<SegmentBelief>(
    { kind: "known-sd", mean: 0.5, levelSd: 2, sd: 0.6 },
    { kind: "normal-gamma", mean: 0, strength: 0.3, shape: 1.5, rate: 0.8 },
  );

  it("equals writing out all 2^(n-1) cuts, brute force up to 8 values", () => {
    fc.assert(
      fc.property(list, fc.double({ min: 0.02, max: 0.6, noNaN: true }), belief, (values, p, one) => {
        const got = answerOf(segmentationPosterior(Object.freeze(values), p, one));
        const brute = byEnumeration(values, p, one);
        expectNear(got.logEvidence, brute.logEvidence, { abs: 1e-9 });
        expectAllNear(got.changeAfter, brute.changeAfter, { abs: 1e-10 });
        expectAllNear(got.changes, brute.changes, { abs: 1e-10 });
        expectAllNear(got.lastLength, brute.lastLength, { abs: 1e-10 });
        expectNear(got.likeliest.chance, brute.likeliest.chance, { abs: 1e-10 });
      }),
      { numRuns: 60 },
    );
  });

  it("turned round in time, the chances of a change turn round too", () => {
    fc.assert(
      fc.property(list, belief, (values, one) => {
        const there = answerOf(segmentationPosterior(values, 0.2, one));
        const back = answerOf(segmentationPosterior([...values].reverse(), 0.2, one));
        expectAllNear([...back.changeAfter].reverse(), there.changeAfter, { abs: 1e-10 });
        expectNear(back.logEvidence, there.logEvidence, { abs: 1e-9 });
      }),
    );
  });
});

describe("calibration", () => {
  it("lists drawn from the belief: the chances given to changes sum to the changes that were there, 2000 lists of 10", () => {
    const chance = seededChances(3);
    const normal = seededNormals(5);
    const belief: SegmentBelief = { kind: "known-sd", mean: 1, levelSd: 2, sd: 0.7 };
    const runs = 2000;
    let said = 0;
    let changed = 0;
    for (let run = 0; run < runs; run++) {
      let level = 1 + 2 * normal();
      const values = Array.from({ length: 10 }, (_, i) => {
        if (i > 0 && chance() < 0.15) {
          changed++;
          level = 1 + 2 * normal();
        }
        return level + 0.7 * normal();
      });
      said += answerOf(segmentationPosterior(values, 0.15, belief)).changeAfter.reduce((sum, one) => sum + one, 0);
    }
    const gaps = runs * 9;
    expectNear(said / gaps, changed / gaps, { abs: monteCarloBand(0.15, gaps) }, "said against true");
    expectNear(changed / gaps, 0.15, { abs: monteCarloBand(0.15, gaps) }, "drawn");
  });
});
