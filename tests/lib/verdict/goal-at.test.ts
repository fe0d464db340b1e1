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
const level90 = (count: number): JudgedTrack["sessions"] =>
  Array.from({ length: count }, (_, at) => ({
    date: dayFromNumber(20_514 + 8 * at),
    captureSd: 0.5,
    swings: [-2, -1, 0, 1, 2].map((off) => 90 + off + 2 * ([1, -1, 0.5, -0.5][at % 4] as number)),
  }));
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

  it("has its least change worth having; where none has one the track's holds, and beside one that has, none has none", () => {
    const own = {
      ...track(14),
      worthwhileAtLeast: 7,
      goals: goals.map((goal, at) => ({ ...goal, worthwhileAtLeast: 2 + at })),
    };
    expect(trackOn(own, "2026-05-31").worthwhileAtLeast).toBe(2);
    expect(trackOn(own, "2026-06-01").worthwhileAtLeast).toBe(3);
    expect(trackOn({ ...track(14), worthwhileAtLeast: 7 }, "2026-05-31").worthwhileAtLeast).toBe(7);
    const one = { ...own, goals: [goals[0], own.goals[1]] as typeof own.goals };
    expect(trackOn(one, "2026-05-31").worthwhileAtLeast).toBeUndefined();
  });

  it.each([
    ["wider", 5 / 3, "open", { low: 60, high: 120 }, 10],
    ["narrower", 10, "steady", { low: 85, high: 95 }, 5 / 3],
  ])("a %s band set after the looks leaves every word of theirs as it was", (_, before, word, goal, least) => {
    const first = { from: "0001-01-01", low: 90 - 3 * before, high: 90 + 3 * before, worthwhileAtLeast: before };
    const held = { ...track(6), sessions: level90(10) };
    const then = judge({ ...held, goal: first, worthwhileAtLeast: before });
    const second = { from: "2026-12-01", ...goal, worthwhileAtLeast: least };
    const now = { ...held, goal, goals: [first, second], worthwhileAtLeast: least };
    expect(judge(now).looks).toEqual(then.looks);
    expect(judge(now)).toMatchObject({ verdict: then.verdict, smallestWorthwhile: then.smallestWorthwhile });
    expect(then.looks?.at(-1)?.verdict).toBe(word);
    // Had the second held from the start, they would say something else.
    expect(judge({ ...now, goals: [{ ...second, from: "0001-01-01" }] }).looks).not.toEqual(then.looks);
  });
});
