import { describe, expect, it } from "vitest";
import { planOnOffer } from "@/lib/report/plan-on-offer";
import { wishedPlan } from "@/lib/report/wished-plan";
import { startNoiseModel } from "@/lib/stats/start-noise-model";
import { judgeTrack } from "@/lib/verdict/judge-track";
import { noiseAlways } from "@/lib/verdict/noise";
import { POLICY } from "@/lib/verdict/policy";
import { flat, madeTrack } from "../verdict/made-track";

const noise = noiseAlways(startNoiseModel("start"));
const judged = (levels: readonly number[]) => {
  const track = { ...madeTrack(1, levels), checkedCaptureSd: 0.4 };
  return { track, verdict: judgeTrack(track, noise, POLICY, "latest").verdict };
};
const nearly = judged([...flat(12, 0), ...flat(2, 8)]);
const wish = (films?: string, swings?: string, care?: string) => {
  const plan = wishedPlan(nearly.verdict, nearly.track, { films, swings, care });
  return plan === null ? null : [plan.sessions, plan.swingsEach, plan.care.name];
};

describe("the plan that is asked about", () => {
  it("nothing wished: the plan on offer, its very camera error", () => {
    const offered = planOnOffer(nearly.verdict);
    if (offered === null) throw new Error("no plan is offered");
    const plan = wishedPlan(nearly.verdict, nearly.track, {});
    expect([plan?.sessions, plan?.swingsEach]).toEqual([offered.sessions, offered.swingsEach]);
    expect((plan?.care.care ?? 0) * (nearly.verdict.usualCaptureSd ?? 0)).toBeCloseTo(offered.captureSd, 12);
  });

  it("what is wished is asked", () => expect(wish("5", "7", "half")).toEqual([5, 7, "half"]));

  it("what nobody can be asked for counts as not wished", () => {
    const base = wish();
    for (const bad of ["0", "9", "-1", "2.5", "1e1", "", "many", "99999"]) expect(wish(bad)).toEqual(base);
    for (const bad of ["2", "11", "NaN"]) expect(wish(undefined, bad)).toEqual(base);
    expect(wish(undefined, undefined, "none at all")).toEqual(base);
    expect(wish("9", "7")).toEqual([base?.[0], 7, base?.[2]]);
  });

  it("nothing points anywhere: the largest plan, with the best care that can be had", () => {
    const still = judged(flat(5, 0));
    expect(planOnOffer(still.verdict)).toBeNull();
    const plan = wishedPlan(still.verdict, still.track, {});
    expect([plan?.sessions, plan?.swingsEach, plan?.care.name]).toEqual([8, 10, plan?.cares.at(-1)?.name]);
  });

  it("a track that is settled, or has no session, is asked nothing", () => {
    const proved = judged([...flat(12, 0), ...flat(8, 20)]);
    expect(wishedPlan(proved.verdict, proved.track, {})).toBeNull();
    const empty = judged([]);
    expect(wishedPlan(empty.verdict, empty.track, {})).toBeNull();
  });
});
