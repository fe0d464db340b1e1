import { describe, expect, it } from "vitest";
import type { JudgedTrack } from "@/lib/domain/judged-track";
import { startNoiseModel } from "@/lib/stats/start-noise-model";
import { judgeTrack } from "@/lib/verdict/judge-track";
import { judgedSeries } from "@/lib/verdict/judged-series";
import { noiseAlways } from "@/lib/verdict/noise";
import { attainableCares } from "@/lib/verdict/plan-futures";
import { POLICY } from "@/lib/verdict/policy";
import { proves } from "@/lib/verdict/proves";
import { pointingOf } from "@/lib/verdict/settle-if-real";
import { flat, madeTrack } from "./made-track";

const start = startNoiseModel("start");
const judge = (track: JudgedTrack) => judgeTrack(track, noiseAlways(start), POLICY, "latest").verdict;

/** A rise of 8 among days of sd 1 seen twice: nearly proved. */
const nearly = madeTrack(1, [...flat(12, 0), ...flat(2, 8)]);
/** A rise of 5 seen twice: something points up, little is sure. */
const hinted = madeTrack(1, [...flat(9, 0), ...flat(2, 5)]);

describe("which way a look points", () => {
  it("no change .4, up .9: up with .6 x .9 = .54", () => {
    const { direction, probability, certainty } = pointingOf(0.4, 0.9);
    expect([direction, certainty]).toEqual(["up", 0.9]);
    expect(probability).toBeCloseTo(0.54, 12);
  });
  it("up .2: down with certainty .8", () =>
    expect(pointingOf(0, 0.2)).toMatchObject({ direction: "down", certainty: 0.8 }));
});

describe("the plan that proves a change, if it is real", () => {
  it("says which way, how big and how likely, and promises four in five at least", () => {
    const { verdict, settleIfReal: plan } = judge(hinted);
    expect(verdict).toBe("open");
    if (plan === null || "none" in plan) throw new Error(`no plan: ${JSON.stringify(plan)}`);
    expect(plan.direction).toBe("up");
    expect(plan.size).toBeGreaterThan(2);
    expect(plan.size).toBeLessThan(8);
    expect(plan.chance).toBeGreaterThanOrEqual(0.8);
    expect(plan.chanceAnySize).toBeLessThanOrEqual(plan.chance);
    expect(plan.sessions).toBeLessThanOrEqual(POLICY.settleSessions);
  });

  it("a change that is at least that big is likelier nowhere than any change that way", () => {
    const { evidence, settleIfReal: plan } = judge(hinted);
    expect(plan?.probability).toBeGreaterThan(0);
    expect(plan?.probability).toBeLessThan((1 - evidence.noChange) * evidence.directionUp);
  });

  it("mirrored, the same plan is for a change the other way", () => {
    const mirrored = {
      ...hinted,
      sessions: hinted.sessions.map((session) => ({ ...session, swings: session.swings.map((value) => -value) })),
    };
    const [up, down] = [judge(hinted).settleIfReal, judge(mirrored).settleIfReal];
    expect(down?.direction).toBe("down");
    expect(down?.size).toBeCloseTo(-(up?.size ?? 0), 6);
  });

  it("is the same at every call, and nothing once the change is proved", () => {
    expect(judge(hinted).settleIfReal).toEqual(judge(hinted).settleIfReal);
    expect(judge(madeTrack(1, [...flat(12, 0), ...flat(6, 8)]))).toMatchObject({ verdict: "gain", settleIfReal: null });
  });

  it("where nothing points anywhere there is none: under 4 sessions, or with directions as likely", () => {
    expect(judge(madeTrack(3, flat(3, 0))).settleIfReal).toBeNull();
    const still = judge({ ...madeTrack(5, flat(10, 0)), smallestWorthwhile: 0.1 });
    expect(still.verdict).toBe("open");
    expect(
      still.settleIfReal === null ||
        (1 - still.evidence.noChange) * Math.max(still.evidence.directionUp, 1 - still.evidence.directionUp) >=
          POLICY.settlePointing,
    ).toBe(true);
  });

  it("followed with a level as far away as it looks, it mostly proves it: 14 of 20 at least", () => {
    const plan = judge(hinted).settleIfReal;
    if (plan === null || "none" in plan) throw new Error("no plan");
    let proved = 0;
    for (let seed = 200; seed < 220; seed++) {
      const after = madeTrack(seed, flat(11 + plan.sessions, 5.5)).sessions.slice(11);
      if (judge({ ...hinted, sessions: [...hinted.sessions, ...after] }).verdict === "gain") proved++;
    }
    expect(proved).toBeGreaterThanOrEqual(14);
  });
});

describe("what the largest plan excludes, if nothing has changed", () => {
  it("eight films of ten swings, half the camera error, with four chances in five", () => {
    const plan = judge(madeTrack(8, flat(6, 0))).settleIfNothing;
    expect(plan).toMatchObject({ sessions: 8, swingsEach: 10, captureSd: 0.5, chance: 0.8 });
    expect(plan?.changeBelow).toBeGreaterThan(0);
  });
  it("the more films, the less is left: over 15 tracks of 6 sessions the median limit after 16 is under that after 2", () => {
    const median = (settleSessions: number): number =>
      Array.from({ length: 15 }, (_, seed) => {
        const { verdict } = judgeTrack(
          { ...madeTrack(seed + 1, flat(6, 0)), smallestWorthwhile: 0.1 },
          noiseAlways(start),
          { ...POLICY, settleSessions, settlePointing: 1, settleDraws: 5 },
          "latest",
        );
        return verdict.settleIfNothing?.changeBelow ?? Number.NaN;
      }).sort((a, b) => a - b)[7] as number;
    expect(median(16)).toBeLessThan(median(2));
  });
  it("is said from the first session on, and of no settled track", () => {
    expect(judge(madeTrack(3, flat(1, 0))).settleIfNothing?.changeBelow).toBeGreaterThan(0);
    expect(judge(madeTrack(1, [...flat(12, 0), ...flat(6, 8)])).settleIfNothing).toBeNull();
  });
});

describe("care that can be had", () => {
  it("half of an error of 1 is had where a check leaves .6 (within a quarter of .5), not where it leaves .7", () => {
    expect(attainableCares(1, 0.6)).toEqual([1, 0.5]);
    expect(attainableCares(1, 0.7)).toEqual([1]);
    expect(attainableCares(1, undefined)).toEqual([1, 0.5]);
  });
  it("a track whose check leaves its usual error is never asked for half of it", () => {
    const careful = judge({ ...hinted, checkedCaptureSd: 1 });
    expect(careful.settleIfReal).toMatchObject({ captureSd: 1 });
    expect(careful.settleIfNothing?.captureSd).toBe(1);
  });
});

describe("proves", () => {
  const { series } = judgedSeries(madeTrack(1, [...flat(12, 0), ...flat(6, 8)]), POLICY);
  it("a rise of 8 over 6 sessions is proved up, not down", () => {
    expect(proves(series, 14, start, "up", POLICY)).toBe(true);
    expect(proves(series, 14, start, "down", POLICY)).toBe(false);
  });
  it("no look among those asked about proves nothing", () =>
    expect(proves(series, series.groups.length, start, "up", POLICY)).toBe(false));
  it("a proof on the way that still holds at the end counts; one that fell below the hold limit doesn't", () => {
    const asked = { ...POLICY, limitLateLooks: 17, limitLateRise: 1000 };
    // The last look asks 1000 more, which these films don't have; the one before it proves it.
    expect(proves(series, 17, start, "up", asked)).toBe(false);
    expect(proves(series, 14, start, "up", asked)).toBe(true);
    expect(proves(series, 14, start, "up", { ...asked, holdLimit: 500 })).toBe(false);
  });
});

describe("nearly proved", () => {
  it("asks for fewer films the stronger the hint", () => {
    const [strong, weak] = [judge(nearly), judge(hinted)].map((verdict) => verdict.settleIfReal);
    if (!strong || "none" in strong || !weak || "none" in weak) throw new Error("no plan");
    expect(strong.sessions).toBeLessThanOrEqual(weak.sessions);
  });
});
