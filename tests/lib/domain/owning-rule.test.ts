import { describe, expect, it } from "vitest";
import { type DatedOwningRule, owningRuleOn, plannedRules, replacedBy } from "@/lib/domain/owning-rule";

const rule = (from: string, sessions: number): DatedOwningRule => ({
  ...{ from, sessions, spanDays: 21, restDays: 7, share: 0.7, shareLow: 0.55 },
});

describe("the owning rule of a day", () => {
  const rules = [rule("2026-03-01", 4), rule("2026-06-01", 2), rule("2026-06-01", 5)];
  it("none before the first one", () => expect(owningRuleOn(rules, "2026-02-28")).toBeNull());
  it("begins on its first day; of two that begin on one day the later entered holds", () => {
    expect(owningRuleOn(rules, "2026-03-01")?.sessions).toBe(4);
    expect(owningRuleOn(rules, "2026-05-31")?.sessions).toBe(4);
    expect(owningRuleOn(rules, "2026-06-01")?.sessions).toBe(5);
  });
  it("one planned for later never begins once another was entered after it with an earlier day", () => {
    const slip = [rule("2026-03-01", 4), rule("2027-06-01", 2), rule("2026-06-01", 5)];
    expect(owningRuleOn(slip, "2027-06-01")?.sessions).toBe(5);
    expect(plannedRules(slip, "2026-05-01").map(({ sessions }) => sessions)).toEqual([5]);
    expect(slip.map((each) => replacedBy(slip, each)?.sessions ?? null)).toEqual([null, 5, null]);
    expect(rules.map((each) => replacedBy(rules, each)?.sessions ?? null)).toEqual([null, 5, null]);
    expect(plannedRules(slip.slice(0, 2), "2026-05-01").map(({ sessions }) => sessions)).toEqual([2]);
  });
});
