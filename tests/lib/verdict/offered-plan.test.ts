import { expect, test } from "vitest";
import { offeredPlan } from "@/lib/verdict/offered-plan";

const plan = { sessions: 2, swingsEach: 5, captureSd: 1, chance: 0.8 };
const real = { ...plan, direction: "up", size: 4, probability: 0.5, chanceAnySize: 0.4 } as const;
const none = { none: "no-plan", sessionsToFirstLook: 0 } as const;

test("one without an if stands before one with; where neither reaches, none", () => {
  expect(offeredPlan({ settle: plan, settleIfReal: real })).toBe(plan);
  expect(offeredPlan({ settle: none, settleIfReal: real })).toBe(real);
  expect(
    offeredPlan({ settle: none, settleIfReal: { ...real, none: "no-plan", bestChance: 0.3 } as never }),
  ).toBeNull();
  expect(offeredPlan({ settle: null, settleIfReal: null })).toBeNull();
});
