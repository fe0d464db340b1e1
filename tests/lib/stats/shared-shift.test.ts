import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cholesky } from "@/lib/stats/cholesky";
import { type ShiftBelief, type ShiftItem, sharedShift } from "@/lib/stats/shared-shift";
import { seededChances, seededNormals } from "./seeded-normals";

const item = (residual: number, variance: number, first: number, second: number, changeVariance = 9): ShiftItem => ({
  residual,
  variance,
  loadings: [first, second],
  changeVariance,
});
const four = [item(3, 1, 0.7, 1), item(2.5, 2, 0.7, 1, 16), item(-1, 1.5, -0.7, 0, 4), item(0.4, 3, 0, 0)];
const beliefs: readonly ShiftBelief[] = [
  { variances: [1, 0.25], weight: 0.9 },
  { variances: [64, 2], weight: 0.1 },
];

/** Log density of residuals about 0 by the Cholesky factor of their whole covariance. */
function denseLogDensity(
  items: readonly ShiftItem[],
  variances: readonly [number, number],
  changed: ReadonlySet<number>,
) {
  const n = items.length;
  const covariance = new Float64Array(n * n);
  items.forEach((a, i) => {
    items.forEach((b, j) => {
      const shared = variances[0] * a.loadings[0] * b.loadings[0] + variances[1] * a.loadings[1] * b.loadings[1];
      covariance[i * n + j] = shared + (i === j ? a.variance + (changed.has(i) ? a.changeVariance : 0) : 0);
    });
  });
  const factor = cholesky(covariance, n);
  let [logDeterminant, square] = [0, 0];
  const solved: number[] = [];
  for (let i = 0; i < n; i++) {
    let rest = (items[i] as ShiftItem).residual;
    for (let j = 0; j < i; j++) rest -= (factor[i * n + j] as number) * (solved[j] as number);
    const pivot = factor[i * n + i] as number;
    solved.push(rest / pivot);
    logDeterminant += 2 * Math.log(pivot);
    square += (rest / pivot) ** 2;
  }
  return -0.5 * (n * Math.log(2 * Math.PI) + logDeterminant + square);
}

const overall = ({ weights, means }: { weights: Float64Array; means: Float64Array }): number =>
  weights.reduce((sum, weight, at) => sum + weight * (means[at] as number), 0);

describe("reference", () => {
  it("one item, one belief, by hand: residual 3, variance 1, loading 2, prior variance 4: mean 24/17, variance 4/17, density N(3; 0, 17)", () => {
    const found = sharedShift([item(3, 1, 2, 0)], [{ variances: [4, 0], weight: 1 }], [1]);
    expect(found.means[0]).toBeCloseTo(24 / 17, 12);
    expect(found.variances[0]).toBeCloseTo(4 / 17, 12);
    expect(found.logEvidence).toBeCloseTo(-0.5 * (Math.log(2 * Math.PI * 17) + 9 / 17), 12);
  });

  it("each set and belief weighs as its dense normal density by Cholesky does, to 12 digits: 16 sets x 2 beliefs", () => {
    const weights = [0.8, 0.04, 0.01, 0.004, 0.001];
    const found = sharedShift(four, beliefs, weights);
    const sets = Array.from({ length: 16 }, (_, bits) => new Set([0, 1, 2, 3].filter((at) => bits & (1 << at))));
    const terms = sets.flatMap((set) =>
      beliefs.map((belief) => ({
        set,
        density: belief.weight * (weights[set.size] as number) * Math.exp(denseLogDensity(four, belief.variances, set)),
      })),
    );
    const total = terms.reduce((sum, term) => sum + term.density, 0);
    expect(found.logEvidence).toBeCloseTo(Math.log(total), 10);
    four.forEach((_, at) => {
      const share = terms.filter((term) => term.set.has(at)).reduce((sum, term) => sum + term.density, 0) / total;
      expect(found.changed[at]).toBeCloseTo(share, 12);
    });
    expect(found.weights).toHaveLength(32);
    const sorted = terms.map((term) => term.density / total).sort((a, b) => a - b);
    const given = [...found.weights].sort((a, b) => a - b);
    for (const [at, weight] of given.entries()) expect(weight).toBeCloseTo(sorted[at] as number, 12);
  });

  it("the first shift's mean is that of a fine grid over both shifts, to 6 digits", () => {
    const [belief] = beliefs as [ShiftBelief];
    const found = sharedShift(four, [belief], [1]);
    let [sum, mean] = [0, 0];
    for (let a = -8; a <= 8; a += 0.02)
      for (let b = -4; b <= 4; b += 0.02) {
        const log = four.reduce(
          (total, each) =>
            total - (each.residual - each.loadings[0] * a - each.loadings[1] * b) ** 2 / (2 * each.variance),
          -(a * a) / (2 * belief.variances[0]) - (b * b) / (2 * belief.variances[1]),
        );
        sum += Math.exp(log);
        mean += a * Math.exp(log);
      }
    expect(found.means[0]).toBeCloseTo(mean / sum, 6);
  });
});

describe("too little and bad input", () => {
  it("no item, no weight, a variance of 0 and a number that isn't finite throw with the value", () => {
    expect(() => sharedShift([], beliefs, [1])).toThrow("0");
    expect(() => sharedShift(four, [], [1])).toThrow("0");
    expect(() => sharedShift(four, beliefs, [0, 1])).toThrow("0");
    expect(() => sharedShift([item(1, 0, 1, 0)], beliefs, [1])).toThrow("0");
    expect(() => sharedShift([item(Number.NaN, 1, 1, 0)], beliefs, [1])).toThrow("NaN");
    expect(() => sharedShift(four, [{ variances: [-1, 0], weight: 1 }], [1])).toThrow("-1");
    expect(() => sharedShift(four, beliefs, [1, -0.5])).toThrow("-0.5");
  });
  it("one item is enough; a belief without a shift says 0", () => {
    const found = sharedShift([item(5, 1, 1, 0)], [{ variances: [0, 0], weight: 1 }], [0.9, 0.1]);
    expect(overall(found)).toBe(0);
    expect([...found.variances]).toEqual([0, 0]);
  });
});

describe("invariance", () => {
  const anyItem = fc
    .tuple(
      fc.double({ min: -20, max: 20, noNaN: true }),
      fc.double({ min: 0.1, max: 9, noNaN: true }),
      fc.double({ min: -2, max: 2, noNaN: true }),
      fc.double({ min: -2, max: 2, noNaN: true }),
    )
    .map(([residual, variance, first, second]) => item(residual, variance, first, second));
  const lists = fc.array(anyItem, { minLength: 2, maxLength: 6 });

  it("the order of the items changes nothing but their order", () => {
    fc.assert(
      fc.property(lists, (list) => {
        const there = sharedShift(list, beliefs, [0.9, 0.02, 0.001]);
        const back = sharedShift([...list].reverse(), beliefs, [0.9, 0.02, 0.001]);
        expect(back.logEvidence).toBeCloseTo(there.logEvidence, 8);
        expect(overall(back)).toBeCloseTo(overall(there), 8);
        for (const [at, share] of [...back.changed].reverse().entries())
          expect(share).toBeCloseTo(there.changed[at] as number, 8);
      }),
      { numRuns: 60 },
    );
  });

  it("an item in another unit says the same: evidence less log 10 for the density's unit", () => {
    fc.assert(
      fc.property(lists, (list) => {
        const scaled = list.map((each, at) =>
          at > 0
            ? each
            : item(
                10 * each.residual,
                100 * each.variance,
                10 * each.loadings[0],
                10 * each.loadings[1],
                100 * each.changeVariance,
              ),
        );
        const there = sharedShift(list, beliefs, [0.9, 0.02]);
        const here = sharedShift(scaled, beliefs, [0.9, 0.02]);
        expect(here.logEvidence).toBeCloseTo(there.logEvidence - Math.log(10), 8);
        expect(overall(here)).toBeCloseTo(overall(there), 8);
      }),
      { numRuns: 60 },
    );
  });

  it("all signs turned turn the shift", () => {
    fc.assert(
      fc.property(lists, (list) => {
        const turned = list.map((each) => ({ ...each, residual: -each.residual }));
        expect(overall(sharedShift(turned, beliefs, [0.9, 0.02]))).toBeCloseTo(
          -overall(sharedShift(list, beliefs, [0.9, 0.02])),
          8,
        );
      }),
      { numRuns: 60 },
    );
  });
});

describe("calibration", () => {
  it("drawn from its own beliefs, the second holds as often as it is given: 2000 draws, within 4 sd", () => {
    const chance = seededChances(11);
    const normals = seededNormals(12);
    let [claimed, held, spread] = [0, 0, 0];
    for (let draw = 0; draw < 2000; draw++) {
      const second = chance() < 0.1;
      const [va, vb] = (beliefs[second ? 1 : 0] as ShiftBelief).variances;
      const [a, b] = [Math.sqrt(va) * normals(), Math.sqrt(vb) * normals()];
      // Nothing changes on its own in .85 of the draws, each of the three items in .05.
      const own = Math.floor((chance() - 0.85) / 0.05);
      const list = four.slice(0, 3).map((each, at) => ({
        ...each,
        residual:
          each.loadings[0] * a +
          each.loadings[1] * b +
          Math.sqrt(each.variance + (at === own ? each.changeVariance : 0)) * normals(),
      }));
      const found = sharedShift(list, beliefs, [0.85, 0.05]);
      const share = found.weights.reduce((sum, weight, at) => sum + (at % 2 === 1 ? weight : 0), 0);
      claimed += share;
      spread += share * (1 - share);
      if (second) held++;
    }
    expect(Math.abs(held - claimed)).toBeLessThan(4 * Math.sqrt(spread));
  });
});
