import { expect, it } from "vitest";
import { AGE_GROUPS, ageGroupOf } from "@/lib/domain/age-group";

it("every age is in one group, by the year alone", () => {
  const at = (age: number) => ageGroupOf(2031 - age, "2031-01-01");
  expect([8, 9, 12, 13, 15, 16, 17, 18, 71].map(at)).toEqual([
    "under-9",
    "9-12",
    "9-12",
    "13-15",
    "13-15",
    "16-17",
    "16-17",
    "18-up",
    "18-up",
  ]);
  expect(ageGroupOf(null, "2031-12-31")).toBe("unknown");
  expect(new Set(AGE_GROUPS).size).toBe(6);
});
