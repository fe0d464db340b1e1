import { beforeAll, describe, expect, it } from "vitest";
import type { NoiseModel } from "@/lib/stats/noise-model";
import { learnAcademy } from "./population";
import { type StoppedTrack, scoreStopped } from "./settle-score";
import { excludedShare, ifReal, reliability, TRUTHS } from "./settle-table";

const SEED = 4711;

/** A count below which a binomial of n and p falls in one of a hundred, by the normal curve. */
function lowest(n: number, p: number): number {
  return Math.ceil(n * p - 2.33 * Math.sqrt(n * p * (1 - p)) - 0.5);
}

describe("plans followed with the whole engine, short form", () => {
  let stopped: readonly StoppedTrack[];
  let unchanged: readonly StoppedTrack[];

  const stop = (name: string, count: number, noise: NoiseModel) => {
    const truth = TRUTHS.find((each) => each.name === name);
    if (truth === undefined) throw new Error(`no such truth: ${name}`);
    return Array.from({ length: count }, (_, number) => scoreStopped(truth, noise, SEED, number));
  };

  beforeAll(() => {
    const noise = learnAcademy(40, SEED);
    stopped = stop("step 3 U", 120, noise);
    unchanged = stop("unchanged", 50, noise);
  }, 600_000);

  it("a step of 3 U that is at least as big as it looks is proved in four of five plans, less the Monte-Carlo band", () => {
    const found = reliability(stopped, ifReal, () => 1);
    if (found === null) throw new Error("no plan was offered");
    expect(found.plans).toBeGreaterThanOrEqual(8);
    expect(found.promised).toBeGreaterThanOrEqual(0.8);
    expect(Math.round(found.kept * found.plans)).toBeGreaterThanOrEqual(lowest(found.plans, 0.8));
  });

  it("of unchanged tracks four of five are shown to have changed by less than was said, less the band", () => {
    const { asked, kept } = excludedShare(unchanged);
    expect(asked).toBeGreaterThanOrEqual(40);
    expect(Math.round(kept * asked)).toBeGreaterThanOrEqual(lowest(asked, 0.8));
  });

  it("a plan is for a change that is there: of unchanged tracks at most one in ten is offered one", () => {
    expect(unchanged.filter((row) => row.ifReal !== null).length).toBeLessThanOrEqual(unchanged.length / 10);
  });
});
