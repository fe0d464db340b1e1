import type { Arm } from "@/lib/domain/fair-test";
import { permutedBlocks } from "@/lib/stats/permuted-blocks";
import { BLOCK_SIZES } from "./fair-test-thresholds";

/**
 * The order in which one coach's students draw the two drills of a test, block by block.
 *
 * @param rng numbers from 0 to below 1, made of the test's seed and the coach: the same ones give the same order
 * @param places how many places are wanted; the last block is whole
 * @returns blocks of arms, see `permutedBlocks`; a longer order begins with the shorter one
 */
export function allocationOrder(rng: () => number, places: number): readonly (readonly Arm[])[] {
  return permutedBlocks(rng, { sizes: BLOCK_SIZES, count: places });
}
