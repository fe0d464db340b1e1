import { describe, expect, it } from "vitest";
import { isLessSure } from "@/lib/verdict/is-less-sure";

const verdict = (noChange: number, listed: boolean, change: object | null = {}) => ({
  listed,
  change,
  evidence: { noChange },
});

describe("isLessSure", () => {
  it.each([
    ["one in three that it is nothing", verdict(0.33, true), true],
    ["just above one in ten", verdict(0.1001, true), true],
    ["one in ten", verdict(0.1, true), false],
    ["as sure as the list", verdict(0.02, true), false],
    ["not on the list, so never said", verdict(0.33, false), false],
    ["nothing proved", verdict(0.9, true, null), false],
  ])("%s", (_, given, is) => {
    expect(isLessSure(given)).toBe(is);
  });
});
