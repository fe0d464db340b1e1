import { beforeAll, describe, expect, it } from "vitest";
import type { NoiseModel } from "@/lib/stats/noise-model";
import { learnAcademy } from "./population";
import { type OwnedSeason, type WatchedSeason, watchSeason } from "./watch-score";
import { alarmed, alarmedWithin } from "./watch-table";

const SEED = 8123;
const UNCHANGED = 60;
const LOST = 60;

/** Alarms in a season of one fundamental at 5 of 100 students who own eight: 1 - .95^(1/8). */
const EACH = 1 - 0.95 ** (1 / 8);

/** A count that a binomial of n and p exceeds in one of a hundred, by the normal curve. */
function highest(n: number, p: number): number {
  return Math.floor(n * p + 2.33 * Math.sqrt(n * p * (1 - p)) + 0.5);
}

/** A count below which a binomial of n and p falls in one of a hundred. */
function lowest(n: number, p: number): number {
  return Math.ceil(n * p - 2.33 * Math.sqrt(n * p * (1 - p)) - 0.5);
}

describe("the watch over what is owned, short form", () => {
  let unchanged: readonly WatchedSeason[];
  let lost: readonly WatchedSeason[];

  const watch = (season: OwnedSeason, count: number, noise: NoiseModel) =>
    Array.from({ length: count }, (_, number) => watchSeason(season, noise, SEED, number));

  beforeAll(() => {
    const noise = learnAcademy(40, SEED);
    unchanged = watch({ name: "unchanged", loss: 0, edges: "either" }, UNCHANGED, noise);
    lost = watch({ name: "loss", loss: 3, edges: "one" }, LOST, noise);
  }, 120_000);

  it(`of ${UNCHANGED} owned seasons without a loss at most ${highest(UNCHANGED, EACH)} meet an alarm: .0064 and its Monte-Carlo band`, () => {
    const found = alarmed(unchanged);
    expect(found.of).toBeGreaterThanOrEqual(UNCHANGED * 0.9);
    expect(Math.round(found.share * found.of)).toBeLessThanOrEqual(highest(UNCHANGED, EACH));
  });

  it(`of losses of 3 U .55 less the band are alarmed within two sessions, of 60 at least ${lowest(LOST, 0.55)}`, () => {
    const found = alarmedWithin(lost, 2);
    expect(found.of).toBeGreaterThanOrEqual(LOST * 0.9);
    expect(Math.round(found.share * found.of)).toBeGreaterThanOrEqual(lowest(found.of, 0.55));
  });

  it(`and .85 less the band within four, of 60 at least ${lowest(LOST, 0.85)}`, () => {
    const found = alarmedWithin(lost, 4);
    expect(Math.round(found.share * found.of)).toBeGreaterThanOrEqual(lowest(found.of, 0.85));
  });
});
