import { expect, test } from "vitest";
import { planFairTest } from "@/lib/drills/fair-test-plan";

// Cohen (1988), Table 2.4.1, from memory: 64 and 26 of each for effects of .5 and .8, power .8, two-sided .05.
test("one look at half a spread takes 2 x 64 students, at .8 of it 2 x 26", () => {
  expect(planFairTest({ least: 2.5, spread: 5, looks: 1 })).toEqual({ kind: "ok", students: 128 });
  expect(planFairTest({ least: 4, spread: 5, looks: 1 })).toEqual({ kind: "ok", students: 52 });
});
test("three looks at half a spread cost two students more, not a third more", () => {
  expect(planFairTest({ least: 2.5, spread: 5, looks: 3 })).toEqual({ kind: "ok", students: 130 });
});
test("a tenth of the spread is out of an academy's reach", () => {
  expect(planFairTest({ least: 0.5, spread: 5, looks: 2 })).toEqual({ kind: "out-of-reach", most: 1000 });
});
test("a huge difference takes ten students of each all the same: with fewer the lot proves nothing", () => {
  expect(planFairTest({ least: 20, spread: 5, looks: 1 })).toEqual({ kind: "ok", students: 20 });
});
