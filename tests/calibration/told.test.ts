import { beforeAll, describe, expect, it } from "vitest";
import { TOLD_ACADEMY, type ToldScore, toldSeason } from "./told-score";

/*
 * SEASON.md 19: in a simulated unchanged academy of 60 families with 8 fundamentals each, at most 3 of 100 are ever told a change
 * in a season. The full form, over many academies: `npm run calibrate:told`.
 */

const SEED = 20261127;
/** Half as many films as the full form has: a look costs the more the later it is. */
const SHORT = { ...TOLD_ACADEMY, sessions: 10 };

describe("a season of an academy, told to its families", () => {
  let unchanged: ToldScore;
  let changed: ToldScore;
  beforeAll(() => {
    unchanged = toldSeason(SHORT, SEED);
    changed = toldSeason({ families: 8, fundamentals: 3, sessions: 14, changing: 8 }, SEED);
    console.log(`families told a change, seed ${SEED}: ${JSON.stringify({ unchanged, changed })}`);
  }, 240_000);

  it("where nothing changes at most 3 of 100 could be told a change after any of its films", () => {
    expect(unchanged.families).toBe(60);
    expect(unchanged.everListed / unchanged.families).toBeLessThanOrEqual(0.03);
  });

  it("no message tells a change that doesn't stand on the list, and where much changes messages tell it", () => {
    expect(unchanged.toldAtEnd).toBeLessThanOrEqual(unchanged.everListed);
    expect(changed.toldAtEnd).toBeLessThanOrEqual(changed.everListed);
    expect(changed.toldAtEnd).toBeGreaterThan(3);
  });
});
