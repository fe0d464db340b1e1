import { beforeAll, describe, expect, it } from "vitest";
import type { NoiseModel } from "@/lib/stats/noise-model";
import { learnAcademy } from "./population";
import type { ReachTruth } from "./reach-population";
import { type ReachScore, scoreReach } from "./reach-score";
import { coverage, NEARING, NEVER } from "./reach-table";

const SEED = 97;
/** Of these curves most dates are said; the whole table is `npm run calibrate:reach`. */
const SHOWN = "gain 8 U, scale 3";
const CURVES = 300;
const STEPS = 100;

/** A count below which a binomial of n and p falls in one of a hundred, by the normal curve. */
function lowest(n: number, p: number): number {
  return Math.ceil(n * p - 2.33 * Math.sqrt(n * p * (1 - p)) - 0.5);
}

describe("dates of reaching the band, short form", () => {
  let curves: readonly ReachScore[];
  let steps: readonly ReachScore[];

  const score = (truth: ReachTruth | undefined, count: number, noise: NoiseModel) => {
    if (truth === undefined) throw new Error("no such truth");
    return Array.from({ length: count }, (_, number) => scoreReach(truth, noise, SEED, number));
  };

  beforeAll(() => {
    const noise = learnAcademy(20, SEED);
    curves = score(
      NEARING.find(({ name }) => name === SHOWN),
      CURVES,
      noise,
    );
    steps = ["step of 8 U, short of the band", "unchanged, band 2 to 6 U away"].flatMap((name) =>
      score(
        NEVER.find((truth) => truth.name === name),
        STEPS,
        noise,
      ),
    );
  }, 600_000);

  it("dates hold in .75, less the Monte-Carlo band: of 10 in 4 at least, of 20 in 10", () => {
    expect([lowest(10, 0.75), lowest(20, 0.75)]).toEqual([4, 10]);
    const found = coverage(curves);
    if (found === null) throw new Error("no dates were said");
    expect(found.said).toBeGreaterThanOrEqual(8);
    expect(Math.round(found.held * found.said)).toBeGreaterThanOrEqual(lowest(found.said, 0.75));
  });

  it(`of ${2 * STEPS} tracks that moved all at once or not at all at most one is given a date, and most steps are close or stopped short`, () => {
    expect(steps.filter(({ said }) => said === "dates").length).toBeLessThanOrEqual(1);
    const asked = steps.filter((each) => each.asked);
    const told = asked.filter(({ said }) => said === "stopped-short" || said === "close");
    expect(asked.length).toBeGreaterThan(STEPS / 2);
    expect(told.length).toBeGreaterThan(asked.length / 2);
  });
});
