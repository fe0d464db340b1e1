import { describe, expect, it } from "vitest";
import { dayFromNumber } from "@/lib/domain/calendar-day";
import type { JudgedTrack } from "@/lib/domain/judged-track";
import { startNoiseModel } from "@/lib/stats/start-noise-model";
import { trackOn } from "@/lib/verdict/goal-at";
import { judgeTrack } from "@/lib/verdict/judge-track";
import { POLICY } from "@/lib/verdict/policy";

const goals = [
  { from: "0001-01-01", low: 85, high: 95 },
  { from: "2026-06-01", low: 60, high: 70 },
];
// Six sessions about 65, then eight about 90: into the first goal and out of the second.
const levels = [65, 66, 64, 65, 64, 66, 90, 91, 89, 90, 91, 89, 90, 90];
const track = (last: number): JudgedTrack => ({
  id: "t",
  goal: { low: 60, high: 70 },
  goals,
  sessions: levels.slice(0, last).map((level, at) => ({
    date: dayFromNumber(20_514 + 8 * at),
    captureSd: 0.5,
    swings: [level - 1, level, level + 1, level, level - 1],
  })),
});
const judge = (given: JudgedTrack) => judgeTrack(given, () => startNoiseModel("start"), POLICY, "looks").verdict;

describe("a goal with a date", () => {
  it("holds from its first day; before the first dated one the first holds", () => {
    expect(trackOn(track(14), "2026-05-31").goal).toEqual({ low: 85, high: 95 });
    expect(trackOn(track(14), "2026-06-01").goal).toEqual({ low: 60, high: 70 });
    expect(trackOn({ id: "t", sessions: [] }, "2026-06-01").goal).toBeUndefined();
  });

  it("a change proved under the old goal stays a gain after the new one, whose place is another question", () => {
    const verdict = judge(track(14));
    expect(verdict.change?.provedOn).toMatch(/^2026-0[45]/);
    expect(verdict).toMatchObject({ verdict: "gain", position: "outside" });
    const { goals: _, ...undated } = track(14);
    expect(judge(undated).verdict).toBe("slip");
  });

  it("looks before the new goal are said as they were: a prefix of the track says the same", () => {
    const whole = judge(track(14)).looks ?? [];
    expect(judge(track(10)).looks).toEqual(whole.slice(0, 10));
  });
});
