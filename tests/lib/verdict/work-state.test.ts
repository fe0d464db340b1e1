import { expect, it } from "vitest";
import { workState } from "@/lib/verdict/work-state";

it.each([
  ["unmeasured", "unmeasured", "unmeasured"],
  ["slipped", "slipped", "slipped"],
  ["owned", "owned", "owned"],
  ["inside", "working", "keep"],
  ["outside", "working", "open"],
  ["doubt", "working", "open"],
  ["no-goal", "working", "open"],
] as const)("%s is %s while it is worked on, else %s", (standing, worked, waiting) => {
  expect([workState(standing, "yes"), workState(standing, "no")]).toEqual([worked, waiting]);
});
