import normalCdf from "@stdlib/stats-base-dists-normal-cdf";
import { describe, expect, it } from "vitest";
import type { Approach, ApproachNode } from "@/lib/stats/exponential-approach";
import { firstPassage } from "@/lib/stats/first-passage";
import { expectNear } from "@/tests/reference/read-reference";
import { monteCarloBand, seededNormals } from "./seeded-normals";

/** Old level 0, gain about 10, four gaps since the start, scale 4. */
const NODE: ApproachNode = {
  weight: 1,
  clock: "days",
  since: 4,
  scale: 4,
  centre: 0.3,
  centreLevel: 3,
  centreVariance: 0.04,
  gain: 10,
  gainVariance: 1,
};
const approach = (...nodes: readonly Partial<ApproachNode>[]): Approach => ({
  gapDays: 7,
  nodes: nodes.map((node) => ({ ...NODE, weight: 1 / nodes.length, ...node })),
});
const STEADY = [{ factor: 1, share: 1 }];

describe("reference: the normal distribution by hand", () => {
  it("14 days are 2 gaps: share 1 - exp(-6/4), mean 3 + (share - .3) 10, variance .04 + (share - .3)^2", () => {
    const share = 1 - Math.exp(-1.5);
    const mean = 3 + (share - 0.3) * 10;
    const sd = Math.hypot(0.2, share - 0.3);
    const passage = firstPassage(approach({}), 8, "up", STEADY);
    expectNear(passage.reachedBy(14), 1 - normalCdf(8, mean, sd), { abs: 1e-8 });
    expectNear(passage.never, normalCdf(8, 10, Math.hypot(0.2, 0.7)), { abs: 1e-8 });
  });

  it("without doubt the day is the curve's own: 10 (1 - exp(-t/4)) reaches 9 at 4 ln 10 gaps, 36.47 days from now", () => {
    const sure = approach({ centre: 0, centreLevel: 0, centreVariance: 1e-12, gainVariance: 1e-12 });
    const passage = firstPassage(sure, 9, "up", STEADY);
    const day = 7 * (4 * Math.log(10) - 4);
    expect([passage.reachedBy(day - 0.1), passage.reachedBy(day + 0.1)]).toEqual([0, 1]);
    expectNear(passage.never, 0, { zero_abs: 1e-12 });
  });

  it("a step that falls short is never reached, whatever the days; a plateau at 8.4 of an edge at 8.5 neither", () => {
    const short = approach(
      { scale: 0, centreLevel: 8.4, centre: 1, centreVariance: 1e-8 },
      { centreLevel: 8.4, centre: 1, centreVariance: 1e-8, gainVariance: 1e-12 },
    );
    const passage = firstPassage(short, 8.5, "up", STEADY);
    expect(passage.reachedBy(3650)).toBe(0);
    expect(passage.never).toBe(1);
  });
});

describe("too little and bad input", () => {
  it("an edge or a pace that isn't finite is refused; so no answer is NaN", () => {
    expect(() => firstPassage(approach({}), Number.NaN, "up", STEADY)).toThrow("edge[0]");
    expect(() => firstPassage(approach({}), 8, "up", [{ factor: Number.NaN, share: 1 }])).toThrow("paces[0]");
  });
});

describe("invariance", () => {
  const both = approach({}, { clock: "groups", scale: 9, gain: 14 }, { scale: 0 });

  it("turned upside down, the level reaches the mirrored edge from above with the same chances", () => {
    const turned = approach(
      ...both.nodes.map((node) => ({ ...node, centreLevel: -node.centreLevel, gain: -node.gain })),
    );
    const [up, down] = [firstPassage(both, 8, "up", STEADY), firstPassage(turned, -8, "down", STEADY)];
    for (const day of [0, 10, 100]) expectNear(down.reachedBy(day), up.reachedBy(day), { abs: 1e-12 });
    expectNear(down.never, up.never, { abs: 1e-12 });
  });

  it("chances rise with the days and end at 1 less never; paces touch only what goes by groups", () => {
    const passage = firstPassage(both, 8, "up", [
      { factor: 0.5, share: 0.5 },
      { factor: 2, share: 0.5 },
    ]);
    const chances = Array.from({ length: 60 }, (_, week) => passage.reachedBy(7 * week));
    chances.slice(1).forEach((chance, i) => {
      expect(chance).toBeGreaterThanOrEqual(chances[i] as number);
    });
    expectNear(passage.reachedBy(1e5), 1 - passage.never, { abs: 1e-9 });
    const byDays = approach({});
    const slow = firstPassage(byDays, 8, "up", [{ factor: 0.1, share: 1 }]);
    expect(slow.reachedBy(30)).toBe(firstPassage(byDays, 8, "up", STEADY).reachedBy(30));
  });
});

describe("calibration", () => {
  it("levels drawn from one node reach the edge by day 14 in its chance of 4000 draws, within four errors", () => {
    const normal = seededNormals(5);
    const passage = firstPassage(approach({}), 8, "up", STEADY);
    const share = 1 - Math.exp(-1.5);
    const runs = 4000;
    let reached = 0;
    for (let run = 0; run < runs; run++) if (3 + 0.2 * normal() + (share - 0.3) * (10 + normal()) >= 8) reached++;
    const chance = passage.reachedBy(14);
    expectNear(reached / runs, chance, { abs: monteCarloBand(chance, runs) });
  });
});
