import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { permutedBlocks } from "@/lib/stats/permuted-blocks";
import { monteCarloBand, seededChances } from "./seeded-normals";

const fixed = (...chances: number[]) => {
  let at = 0;
  return () => chances[at++ % chances.length] as number;
};

describe("reference: by hand", () => {
  it("sizes 2 and 4, chances .9 .99 .99 .99 then .1 .2: a block of 4 as it lies, 0 1 0 1, then one of 2 turned, 1 0", () => {
    expect(permutedBlocks(fixed(0.9, 0.99, 0.99, 0.99, 0.1, 0.2), { sizes: [2, 4], count: 6 })).toEqual([
      [0, 1, 0, 1],
      [1, 0],
    ]);
  });
});

describe("too little and bad input", () => {
  it("no place wanted is no block", () => {
    expect(permutedBlocks(seededChances(1), { sizes: [4], count: 0 })).toEqual([]);
  });
  it("no size, an odd one, 0 and half a place are refused", () => {
    const rng = seededChances(1);
    expect(() => permutedBlocks(rng, { sizes: [], count: 2 })).toThrow("needs a size");
    expect(() => permutedBlocks(rng, { sizes: [4, 3], count: 2 })).toThrow("got 3");
    expect(() => permutedBlocks(rng, { sizes: [0], count: 2 })).toThrow("got 0");
    expect(() => permutedBlocks(rng, { sizes: [2], count: 1.5 })).toThrow("got 1.5");
  });
});

describe("invariance", () => {
  it("every block holds both arms equally often, places never differ by more than half a block, the last block is whole", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), fc.integer({ min: 1, max: 60 }), (seed, count) => {
        const blocks = permutedBlocks(seededChances(seed), { sizes: [2, 4, 6], count });
        let lead = 0;
        for (const block of blocks) {
          expect(block.filter((arm) => arm === 1).length).toBe(block.length / 2);
          for (const arm of block) {
            lead += arm === 1 ? 1 : -1;
            expect(Math.abs(lead)).toBeLessThanOrEqual(3);
          }
        }
        const places = blocks.flat().length;
        expect(places).toBeGreaterThanOrEqual(count);
        expect(places - (blocks.at(-1)?.length ?? 0)).toBeLessThan(count);
      }),
      { numRuns: 200 },
    );
  });
  it("the same chances give the same blocks, and more places begin with the fewer ones", () => {
    const few = permutedBlocks(seededChances(5), { sizes: [2, 4], count: 10 });
    const many = permutedBlocks(seededChances(5), { sizes: [2, 4], count: 40 });
    expect(many.slice(0, few.length)).toEqual(few);
  });
});

describe("calibration", () => {
  it("6000 blocks of 4: each of the 6 orders in a sixth, within 4 standard errors (.019)", () => {
    const rng = seededChances(11);
    const runs = 6000;
    const counts = new Map<string, number>();
    for (const block of permutedBlocks(rng, { sizes: [4], count: 4 * runs }))
      counts.set(block.join(""), (counts.get(block.join("")) ?? 0) + 1);
    expect(counts.size).toBe(6);
    for (const seen of counts.values()) expect(Math.abs(seen / runs - 1 / 6)).toBeLessThan(monteCarloBand(1 / 6, runs));
  });
});
