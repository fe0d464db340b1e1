import { expect, test } from "vitest";
import { planSeconds } from "@/lib/verdict/plan-minutes";

const front = (id: string, swings: number, derivedFrom: [string, string] | null = null) => ({
  fundamental: { id, view: "face-on" as const, derivedFrom } as never,
  swings,
});
const behind = (id: string, swings: number) => ({
  fundamental: { id, view: "down-the-line" as const, derivedFrom: null } as never,
  swings,
});

test("seconds: 15 a value, 10 a swing and view, 60 a view", () => {
  expect(planSeconds([])).toBe(0);
  expect(planSeconds([front("hinge", 5)])).toBe(5 * 15 + 5 * 10 + 60);
  expect(planSeconds([front("hinge", 5), front("trail-v", 3)])).toBe((5 + 3) * 15 + 5 * 10 + 60);
  expect(planSeconds([front("hinge", 5), behind("foot-line", 3)])).toBe((5 + 3) * 15 + (5 + 3) * 10 + 2 * 60);
});

test("a difference takes both its parts, and what is read for two is read once: 3 + 5, not 3 + 3 + 5", () => {
  const kept = front("tilt-kept", 3, ["top-tilt", "setup-tilt"]);
  expect(planSeconds([kept])).toBe(6 * 15 + 3 * 10 + 60);
  expect(planSeconds([kept, front("setup-tilt", 5)])).toBe((3 + 5) * 15 + 5 * 10 + 60);
});
