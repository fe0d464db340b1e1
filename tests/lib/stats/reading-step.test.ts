import { describe, expect, it } from "vitest";
import { readingStep } from "@/lib/stats/reading-step";

describe("reference", () => {
  it.each([
    [[10, -5, 0], 5],
    [[4, -6, 10], 2],
    [[4, 7], 1],
    [[4, 7.5], 0],
    [[], 0],
  ])("%j gives %d", (values, step) => {
    expect(readingStep(values)).toBe(step);
  });
});
