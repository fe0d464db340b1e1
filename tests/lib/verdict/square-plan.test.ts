import { describe, expect, it } from "vitest";
import type { JudgedTrack } from "@/lib/domain/judged-track";
import { startNoiseModel } from "@/lib/stats/start-noise-model";
import { judgeTrack } from "@/lib/verdict/judge-track";
import { noiseAlways } from "@/lib/verdict/noise";
import { POLICY } from "@/lib/verdict/policy";
import { squarePlan } from "@/lib/verdict/square-plan";
import { flat, madeTrack } from "./made-track";

const noise = noiseAlways(startNoiseModel("start"));
const planOf = (track: JudgedTrack) =>
  squarePlan(track, judgeTrack(track, noise, POLICY, "latest").verdict, noise, POLICY);
const filmed = (track: JudgedTrack, captureSd: number, checkedCaptureSd: number): JudgedTrack => ({
  ...track,
  checkedCaptureSd,
  sessions: track.sessions.map((session) => ({ ...session, captureSd })),
});

/** A rise of 10 seen in two films with a phone that nobody looked at. */
const hinted = filmed(madeTrack(2, [...flat(9, 0), ...flat(2, 10)]), 3, 0.86);

describe("films that a checked phone would save", () => {
  it("a phone checked from now on answers with fewer films than one that nobody looks at", () => {
    const plan = planOf(hinted);
    if (plan === null) throw new Error("no plan");
    expect(plan.checked).toBeGreaterThan(0);
    expect(plan.checked).toBeLessThan(plan.asItIs ?? Number.POSITIVE_INFINITY);
    expect(plan.question).toBe("if-real");
  });

  it("nothing is said where the phone is as good as checked, or what a check leaves isn't known", () => {
    expect(planOf(filmed(hinted, 0.9, 0.86))).toBeNull();
    expect(planOf(madeTrack(1, [...flat(9, 0), ...flat(3, 6)]))).toBeNull();
  });

  it("nothing is said of a track that isn't open", () => {
    const proved = filmed(madeTrack(1, [...flat(12, 0), ...flat(8, 20)]), 3, 0.86);
    expect(judgeTrack(proved, noise, POLICY, "latest").verdict.verdict).not.toBe("open");
    expect(planOf(proved)).toBeNull();
  });

  it("the same track gives the same plan", () => expect(planOf(hinted)).toEqual(planOf(hinted)));
});
