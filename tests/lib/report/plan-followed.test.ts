import { expect, it } from "vitest";
import type { Asking, TakenPlan } from "@/lib/domain/asking";
import { planFollowed } from "@/lib/report/plan-followed";
import type { TrackHistory } from "@/lib/verdict/track-history";

const PLAN: TakenPlan = { sessions: 2, swingsEach: 3, captureSd: 1, chance: 0.8, after: "2026-07-01", ifReal: -4 };
const asking = (plan: TakenPlan | null): Asking => ({
  ...{ studentId: "s", fundamentalId: "hinge", clubGroup: "iron", state: plan ? "planned" : "stopped" },
  ...{ day: "2026-07-02", who: "Bo", plan },
});
const history = (days: readonly string[]): TrackHistory =>
  ({
    judged: { checkedCaptureSd: null },
    sessions: days.map((day) => ({ session: { day }, swings: [1, 2, 3], apart: null, captureSd: 1 })),
  }) as unknown as TrackHistory;
const BOTH = ["2026-07-05", "2026-07-12"];
const left = (changeBelow: number | null, over: { plan?: TakenPlan | null; days?: readonly string[]; said?: "gain" }) =>
  planFollowed(asking(over.plan === undefined ? PLAN : over.plan), history(over.days ?? BOTH), {
    verdict: over.said ?? "open",
    changeBelow,
  });

it("of a plan that was followed: smaller than what it was meant for, or still not enough", () => {
  expect(left(3.9, {})).toBe("smaller");
  expect(left(4, {})).toBe("smaller");
  expect(left(4.1, {})).toBe("not-enough");
  expect(left(null, {})).toBe("not-enough");
  const { ifReal: _meant, ...whatever } = PLAN;
  expect(left(1, { plan: whatever })).toBe("not-enough");
});

it("says nothing where none was taken or followed, or where the question is settled", () => {
  expect(left(1, { plan: null })).toBeNull();
  expect(planFollowed(null, history(BOTH), { verdict: "open", changeBelow: 1 })).toBeNull();
  expect(left(1, { days: ["2026-06-30", "2026-07-05"] })).toBeNull();
  expect(left(1, { said: "gain" })).toBeNull();
});
