import { dayFromNumber } from "@/lib/domain/calendar-day";
import type { JudgedSession, JudgedTrack } from "@/lib/domain/judged-track";

/** Seeded numbers between 0 and 1 (a 32-bit mixer), so that a made track is the same at every run. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return (((mixed ^ (mixed >>> 14)) >>> 0) + 0.5) / 4294967296;
  };
}

/** A standard normal number. */
export function normal(rng: () => number): number {
  return Math.sqrt(-2 * Math.log(rng())) * Math.cos(2 * Math.PI * rng());
}

/** A made track: levels by session, day sd 1, camera sd 1, swing sd 2, five swings, ten days apart. */
export function madeTrack(seed: number, levels: readonly number[], over: Partial<JudgedTrack> = {}): JudgedTrack {
  const rng = seeded(seed);
  const sessions = levels.map((level, i): JudgedSession => {
    const mean = level + Math.SQRT2 * normal(rng);
    return {
      date: dayFromNumber(20_000 + 10 * i),
      captureSd: 1,
      swings: Array.from({ length: 5 }, () => mean + 2 * normal(rng)),
    };
  });
  return { id: `made-${seed}`, better: "up", sessions, ...over };
}

/** `count` sessions at one level. */
export function flat(count: number, level: number): number[] {
  return new Array<number>(count).fill(level);
}
