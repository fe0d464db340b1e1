import { describe, expect, it } from "vitest";
import type { FairAllocation, FairFigures, FairStep } from "@/lib/domain/fair-test";
import { fairFraction, fairTestState } from "@/lib/drills/fair-test-state";

const test = { students: 10, looks: 3, days: 42 };
const draw = (day: string, place: number): FairAllocation => ({
  ...{ id: `d${place}`, testId: "t", studentId: `s${place}`, clubGroup: "iron", coachId: "u", place, arm: 0 },
  ...{ day, who: "Robin", recordedAt: `${day}T08:00:00.000Z` },
});
const figures = (says: FairFigures["says"]): FairFigures => ({
  ...{ says, fraction: 0.4, estimate: 1, low: -1, high: 3, p: 0.2, orders: 100, counted: "all" },
  ...{ have: [2, 2] as [number, number], missing: 0, version: "fair-1" },
});
const step = (number: number, kind: FairStep["kind"], says: FairFigures["says"] | null): FairStep => ({
  ...{ number, kind, figures: says === null ? null : figures(says), why: "", day: "2031-03-01" },
  ...{ who: "Robin", recordedAt: "2031-03-01T08:00:00.000Z" },
});
const draws = ["2031-01-01", "2031-01-05", "2031-01-07", "2031-01-09", "2031-02-01"].map(draw);

describe("how far a test has come", () => {
  it("a draw is complete on the day after its days are over", () => {
    const complete = (today: string) => fairTestState(test, draws, [], today).complete.length;
    expect([complete("2031-02-12"), complete("2031-02-13"), complete("2031-02-21")]).toEqual([0, 1, 4]);
  });
  it("a look is due at its share of the students, rounded up, and no sooner", () => {
    expect(fairTestState(test, draws, [], "2031-02-20").next).toEqual({ number: 1, needs: 4, due: "no" });
    expect(fairTestState(test, draws, [], "2031-02-21").next).toEqual({ number: 1, needs: 4, due: "yes" });
    const after = fairTestState(test, draws, [step(1, "look", "open")], "2031-06-01");
    expect(after.next).toEqual({ number: 2, needs: 7, due: "no" });
  });
  it("is over once something is proved, its looks are used up, or it was ended", () => {
    const running = (...steps: FairStep[]) => fairTestState(test, draws, steps, "2031-06-01").running;
    expect(running(step(1, "look", "open"))).toBe("yes");
    expect(running(step(1, "look", "first"))).toBe("no");
    expect(running(step(1, "look", "open"), step(2, "look", "open"), step(3, "look", "alike"))).toBe("no");
    expect(running(step(1, "end", null))).toBe("no");
  });
  it("the last look has all of the plan in, an earlier one its share", () => {
    expect([1, 2, 3].map((look) => fairFraction(test, look, 4))).toEqual([0.4, 0.4, 1]);
    expect(fairFraction(test, 1, 12)).toBe(1);
  });
});
