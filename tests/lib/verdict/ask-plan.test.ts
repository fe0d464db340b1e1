import { describe, expect, it } from "vitest";
import type { JudgedTrack } from "@/lib/domain/judged-track";
import { startNoiseModel } from "@/lib/stats/start-noise-model";
import { askPlan, isAskable } from "@/lib/verdict/ask-plan";
import type { Plan } from "@/lib/verdict/cheapest-plan";
import { judgeTrack } from "@/lib/verdict/judge-track";
import { noiseAlways } from "@/lib/verdict/noise";
import { POLICY } from "@/lib/verdict/policy";
import { flat, madeTrack } from "./made-track";

const noise = noiseAlways(startNoiseModel("start"));
const verdictOf = (track: JudgedTrack) => judgeTrack(track, noise, POLICY, "latest").verdict;
const ask = (track: JudgedTrack, plan: Plan) => askPlan(track, verdictOf(track), plan, noise, POLICY);
const plan = (sessions: number, swingsEach: number, care: number): Plan => ({ sessions, swingsEach, care });

/** Open tracks: nearly proved, pointing up, flat. */
const nearly = madeTrack(1, [...flat(12, 0), ...flat(2, 8)]);
const hinted = madeTrack(2, [...flat(9, 0), ...flat(2, 10)]);
const still = madeTrack(4, flat(7, 0));

describe("what one plan would tell", () => {
  it("the plan on offer, asked, gets exactly the chance that it was offered with", () => {
    let offered = 0;
    for (let seed = 1; seed <= 12; seed++)
      for (const levels of [
        [...flat(12, 0), ...flat(2, 8)],
        [...flat(9, 0), ...flat(2, 10)],
        [...flat(6, 0), ...flat(2, 6)],
      ]) {
        const track = madeTrack(seed, levels);
        const { settle, settleIfReal, usualCaptureSd } = verdictOf(track);
        const usual = usualCaptureSd ?? Number.NaN;
        if (settle !== null && !("none" in settle)) {
          const answer = ask(track, plan(settle.sessions, settle.swingsEach, settle.captureSd / usual));
          expect(answer?.settles).toBe(settle.chance);
          expect(answer?.captureSd).toBe(settle.captureSd);
          offered++;
        }
        if (settleIfReal !== null && !("none" in settleIfReal)) {
          const { sessions, swingsEach, captureSd, chance, size, probability, direction } = settleIfReal;
          const answer = ask(track, plan(sessions, swingsEach, captureSd / usual));
          expect(answer?.ifReal).toEqual({ direction, size, probability, proves: chance });
          offered++;
        }
      }
    expect(offered).toBeGreaterThan(8);
  });

  it("the largest plan, asked, excludes what it was said to exclude", () => {
    const { settleIfNothing, usualCaptureSd } = verdictOf(still);
    if (settleIfNothing === null || usualCaptureSd === null) throw new Error("nothing is excluded");
    const { sessions, swingsEach, captureSd, changeBelow, chance } = settleIfNothing;
    const answer = ask(still, plan(sessions, swingsEach, captureSd / usualCaptureSd));
    expect(answer?.ifNothing).toEqual({ changeBelow, chance });
  });

  it("more films tell at least about as much: 8 of 10 swings no less than 1 of 3, of proving and of excluding", () => {
    for (const track of [nearly, hinted, still]) {
      const [few, many] = [ask(track, plan(1, 3, 1)), ask(track, plan(8, 10, 0.5))];
      expect(many?.settles).toBeGreaterThanOrEqual(few?.settles ?? Number.NaN);
      expect(many?.ifReal?.proves ?? 1).toBeGreaterThanOrEqual(few?.ifReal?.proves ?? 0);
      expect(many?.ifNothing?.changeBelow).toBeLessThan(few?.ifNothing?.changeBelow ?? Number.NaN);
    }
  });

  it("a track that points nowhere has no answer for a real change; one of two films none for none", () => {
    expect(ask(still, plan(4, 5, 1))?.ifReal).toBeNull();
    const two = madeTrack(3, flat(2, 0));
    expect(ask(two, plan(1, 5, 1))).toMatchObject({ settles: 0, ifReal: null, ifNothing: null });
    expect(ask(two, plan(4, 5, 1))?.ifNothing?.changeBelow).toBeGreaterThan(0);
  });

  it("asks nothing of a track that is settled, or has no session", () => {
    const proved = madeTrack(1, [...flat(12, 0), ...flat(8, 20)]);
    expect(verdictOf(proved).verdict).not.toBe("open");
    expect(ask(proved, plan(4, 5, 1))).toBeNull();
    expect(ask({ ...still, sessions: [] }, plan(4, 5, 1))).toBeNull();
  });

  it("is the same at every call, and leaves the track as it was", () => {
    const before = JSON.stringify(hinted);
    expect(ask(hinted, plan(3, 5, 0.5))).toEqual(ask(hinted, plan(3, 5, 0.5)));
    expect(JSON.stringify(hinted)).toBe(before);
  });

  it("refuses a plan that nobody can be asked for", () => {
    for (const bad of [plan(0, 5, 1), plan(9, 5, 1), plan(2.5, 5, 1), plan(2, 2, 1), plan(2, 11, 1), plan(2, 5, 0)]) {
      expect(isAskable(bad, POLICY)).toBe(false);
      expect(() => ask(hinted, bad)).toThrow(RangeError);
    }
    expect(isAskable(plan(2, Number.NaN, 1), POLICY)).toBe(false);
    expect(isAskable(plan(2, 7, 0.3), POLICY)).toBe(true);
  });
});
