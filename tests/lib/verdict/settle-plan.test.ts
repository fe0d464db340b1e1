import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { startNoiseModel } from "@/lib/stats/start-noise-model";
import { cheapestPlan, type Plan, planPrice } from "@/lib/verdict/cheapest-plan";
import { judgeTrack } from "@/lib/verdict/judge-track";
import { noiseAlways } from "@/lib/verdict/noise";
import { POLICY, SETTLE_CARES, SETTLE_SWINGS } from "@/lib/verdict/policy";
import { spreadPoints } from "@/lib/verdict/spread-points";
import { thinNoise } from "@/lib/verdict/thin-noise";
import { flat, madeTrack } from "./made-track";

const start = startNoiseModel("start");
const settleOf = (levels: readonly number[], seed: number) =>
  judgeTrack(madeTrack(seed, levels), noiseAlways(start), POLICY, "latest").verdict;

describe("cheapestPlan", () => {
  const every = SETTLE_CARES.flatMap((care) =>
    SETTLE_SWINGS.flatMap((swingsEach) =>
      Array.from({ length: POLICY.settleSessions }, (_, i): Plan => ({ sessions: i + 1, swingsEach, care })),
    ),
  );

  it("price: 2 sessions of 5 swings cost 2 x (3 + .3 x 5) = 9, with half the camera error x 1.2 = 10.8", () => {
    expect(planPrice({ sessions: 2, swingsEach: 5, care: 1 }, POLICY)).toBeCloseTo(9, 12);
    expect(planPrice({ sessions: 2, swingsEach: 5, care: 0.5 }, POLICY)).toBeCloseTo(10.8, 12);
  });

  it("finds the least price of all plans, for any chance that grows with sessions, swings and care", () => {
    const weights = fc.record({
      session: fc.double({ min: 0, max: 0.4, noNaN: true }),
      swing: fc.double({ min: 0, max: 0.06, noNaN: true }),
      care: fc.double({ min: 0, max: 0.3, noNaN: true }),
      base: fc.double({ min: -0.5, max: 0.6, noNaN: true }),
    });
    fc.assert(
      fc.property(weights, (w) => {
        const chance = (plan: Plan) =>
          Math.min(1, w.base + w.session * plan.sessions + w.swing * plan.swingsEach + w.care * (1 - plan.care));
        const good = every.filter((plan) => chance(plan) >= POLICY.settleChance);
        const found = cheapestPlan(chance, POLICY);
        if (good.length === 0) expect(found).toBeNull();
        else {
          const least = Math.min(...good.map((plan) => planPrice(plan, POLICY)));
          expect(planPrice(found?.plan as Plan, POLICY)).toBeCloseTo(least, 9);
          expect(found?.chance).toBeGreaterThanOrEqual(POLICY.settleChance);
        }
      }),
    );
  });

  it("a hopeless track costs the largest plan alone", () => {
    const asked: Plan[] = [];
    const chance = (plan: Plan) => {
      asked.push(plan);
      return 0;
    };
    expect(cheapestPlan(chance, POLICY)).toBeNull();
    expect(asked).toEqual([{ sessions: 8, swingsEach: 10, care: 0.5 }]);
  });
});

describe("settlePlan", () => {
  // A change of 8 seen twice is nearly proved; with the level staying there, a few sessions more prove it.
  const nearly = [...flat(12, 0), ...flat(2, 8)];

  it("a change that is nearly proved needs few sessions, with a chance of at least .8", () => {
    const verdict = settleOf(nearly, 1);
    expect(verdict.verdict).toBe("open");
    expect(verdict.settle).toMatchObject({ sessions: expect.any(Number), swingsEach: expect.any(Number) });
    const plan = verdict.settle as { sessions: number; swingsEach: number; captureSd: number; chance: number };
    expect(plan.sessions).toBeLessThanOrEqual(12);
    expect([3, 5, 8, 10]).toContain(plan.swingsEach);
    expect([0.5, 1]).toContain(plan.captureSd);
    expect(plan.chance).toBeGreaterThanOrEqual(0.8);
  });

  it("is the same at every call", () => {
    expect(settleOf(nearly, 1).settle).toEqual(settleOf(nearly, 1).settle);
  });

  it("followed with the level staying where it is, it mostly settles: 14 of 20 at least", () => {
    const plan = settleOf(nearly, 1).settle as { sessions: number };
    const before = madeTrack(1, nearly);
    let settled = 0;
    for (let seed = 100; seed < 120; seed++) {
      const after = madeTrack(seed, flat(14 + plan.sessions, 8)).sessions.slice(14);
      const followed = { ...before, sessions: [...before.sessions, ...after] };
      const { verdict } = judgeTrack(followed, noiseAlways(start), POLICY, "latest").verdict;
      if (verdict !== "open") settled++;
    }
    expect(settled).toBeGreaterThanOrEqual(14);
  });

  it("before the first look it says how many sessions that takes", () => {
    expect(settleOf([1, 2], 13).settle).toMatchObject({ none: "first-look", sessionsToFirstLook: 2 });
  });
});

describe("spreadPoints", () => {
  it("each coordinate of 5 points takes the middles of fifths: quantiles of .1, .3, .5, .7, .9, published as -1.2816, -.5244, 0", () => {
    const points = spreadPoints(5, 24);
    for (let d = 0; d < 24; d++) {
      const sorted = points.map((point) => point[d] as number).sort((a, b) => a - b);
      [-1.2816, -0.5244, 0, 0.5244, 1.2816].forEach((quantile, i) => {
        expect(sorted[i]).toBeCloseTo(quantile, 4);
      });
    }
  });
  it("no trend from one coordinate to the next: over 24 points of 24, neighbours correlate by less than .1 on average", () => {
    const points = spreadPoints(24, 24);
    let sum = 0;
    for (let d = 1; d < 24; d++)
      sum += points.reduce((product, point) => product + (point[d] as number) * (point[d - 1] as number), 0) / 24;
    expect(Math.abs(sum / 23)).toBeLessThan(0.1);
  });
  it("every coordinate of 200 points has a mean near 0 and an sd near 1", () => {
    const points = spreadPoints(200, 24);
    for (let d = 0; d < 24; d++) {
      const mean = points.reduce((sum, point) => sum + (point[d] as number), 0) / points.length;
      const square = points.reduce((sum, point) => sum + (point[d] as number) ** 2, 0) / points.length;
      expect(Math.abs(mean)).toBeLessThan(0.1);
      expect(Math.abs(Math.sqrt(square) - 1)).toBeLessThan(0.1);
    }
  });
});

describe("thinNoise", () => {
  it("six cells at most for each persistence; total weight and mean day sd are kept", () => {
    const thin = thinNoise(start);
    const mean = (cells: typeof start.cells) => cells.reduce((sum, cell) => sum + cell.weight * cell.daySd, 0);
    expect(thin.cells.length).toBeLessThanOrEqual(12);
    expect(thin.cells.reduce((sum, cell) => sum + cell.weight, 0)).toBeCloseTo(1, 12);
    expect(mean(thin.cells)).toBeCloseTo(mean(start.cells), 12);
  });
});
