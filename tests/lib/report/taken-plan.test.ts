import { describe, expect, it } from "vitest";
import { takenPlan } from "@/lib/report/taken-plan";
import type { PlanAnswer } from "@/lib/verdict/ask-plan";

const answer = (settles: number, proves: number | null): PlanAnswer => ({
  ...{ sessions: 3, swingsEach: 5, captureSd: 1, settles, ifNothing: null },
  ifReal: proves === null ? null : { direction: "up", size: 6, probability: 0.4, proves },
});

describe("what films may be planned for", () => {
  it("from .8 on for whatever is true, which comes before a condition", () => {
    expect(takenPlan(answer(0.8, 0.9))).toEqual({ kind: "settles", chance: 0.8 });
  });
  it("else for a real change, with the size that it is meant for", () => {
    expect(takenPlan(answer(0.79, 0.8))).toEqual({ kind: "if-real", chance: 0.8, size: 6 });
  });
  it("below .8 either way nobody is asked for them", () => {
    expect(takenPlan(answer(0.79, 0.79))).toBeNull();
    expect(takenPlan(answer(0.5, null))).toBeNull();
  });
});
