import { normalQuantile } from "@/lib/stats/normal-distribution";

/** Chances that a seed determines, above 0 and below 1: mulberry32 (Tommy Ettinger, public domain). */
export function seededChances(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return (((mixed ^ (mixed >>> 14)) >>> 0) + 0.5) / 2 ** 32;
  };
}

/** Standard normal numbers that a seed determines. */
export function seededNormals(seed: number): () => number {
  const chance = seededChances(seed);
  return () => normalQuantile(chance());
}

/** How far a share counted over `runs` may lie from the true one: four standard errors, missed once in 16,000 seeds. */
export function monteCarloBand(share: number, runs: number): number {
  return 4 * Math.sqrt((share * (1 - share)) / runs);
}
