import { expect, it } from "vitest";
import { planHref } from "@/lib/report/plan-href";

it("says of a next film's page which clubs and which form it shows, as far as they are known", () => {
  expect(planHref("s1", {})).toBe("/students/s1/plan");
  expect(planHref("s1", { club: "driver" })).toBe("/students/s1/plan?club=driver");
  expect(planHref("s1", { club: "driver", draft: "d1" })).toBe("/students/s1/plan?draft=d1&club=driver");
  expect(planHref("s1", { club: "iron&told=yes" })).toBe("/students/s1/plan?club=iron%26told%3Dyes");
});
