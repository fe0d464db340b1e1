import { expect, it } from "vitest";
import { workStanding } from "@/lib/verdict/work-standing";
import { MADE } from "./made-work";

it.each([
  ["unmeasured", "unmeasured"],
  ["no-level", "unmeasured"],
  ["no-goal", "no-goal"],
  ["inside", "inside"],
  ["edge", "doubt"],
  ["outside", "outside"],
  ["gained", "outside"],
  ["holding", "outside"],
  ["owned", "owned"],
  ["owned-edge", "owned"],
  ["slipped", "slipped"],
  ["slipped-edge", "slipped"],
  ["slip-back-inside", "inside"],
  ["slip-alone", "outside"],
  ["went-through", "outside"],
] as const)("%s stands as %s", (made, standing) => {
  expect(workStanding({ verdict: MADE[made] })).toBe(standing);
});
