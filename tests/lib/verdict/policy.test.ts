import { describe, expect, it } from "vitest";
import { limitAt } from "@/lib/verdict/limit-at";
import { POLICY, POLICY_VERSION, THRESHOLDS } from "@/lib/verdict/policy";
import { policyWith } from "@/lib/verdict/policy-with";

describe("policy", () => {
  it("every threshold has a unit, a reason, a source, and a value within its bounds", () => {
    for (const threshold of Object.values(THRESHOLDS)) {
      expect(threshold.unit).not.toBe("");
      expect(threshold.reason).not.toBe("");
      expect(threshold.source).not.toBe("");
      expect(threshold.value).toBeGreaterThanOrEqual(threshold.bounds[0]);
      expect(threshold.value).toBeLessThanOrEqual(threshold.bounds[1]);
    }
  });

  it("the limit is 4.35 at look 4, 1.85 from look 9 to 20, 3.05 at 40, 3.15 for looks 41 to 50, 3.25 for 51 to 60", () => {
    expect(
      [4, 8, 9, 20, 21, 40, 41, 50, 51, 60, 100].map((look) => Math.round(limitAt(look, POLICY) * 100) / 100),
    ).toEqual([4.35, 2.35, 1.85, 1.85, 1.91, 3.05, 3.15, 3.15, 3.25, 3.25, 3.65]);
  });

  it("an override shows in the version, in the order of the alphabet; of one key the last counts", () => {
    const outcome = policyWith(["limit=3.5", "holdLimit=0.5", "limit=3.25"]);
    expect(outcome).toMatchObject({
      kind: "ok",
      policy: { version: `${POLICY_VERSION}+holdLimit=0.5+limit=3.25`, limit: 3.25, holdLimit: 0.5, direction: 0.95 },
    });
  });

  it("without overrides it is the built-in policy", () => {
    expect(policyWith([])).toEqual({ kind: "ok", policy: POLICY });
  });

  it.each([
    ["limit", { code: "policy-form", text: "limit" }],
    ["=3", { code: "policy-form", text: "=3" }],
    ["version=9", { code: "policy-unknown", key: "version" }],
    ["Limit=3", { code: "policy-unknown", key: "Limit" }],
    ["limit=", { code: "policy-value", key: "limit", text: "" }],
    ["limit=three", { code: "policy-value", key: "limit", text: "three" }],
    ["limit=NaN", { code: "policy-value", key: "limit", text: "NaN" }],
    ["direction=1.5", { code: "policy-value", key: "direction", low: 0.5, high: 1 }],
    ["listShare=0", { code: "policy-value", key: "listShare" }],
  ])("refuses %s", (text, issue) => {
    expect(policyWith(["limit=4", text])).toMatchObject({ kind: "issue", issue });
  });
});
