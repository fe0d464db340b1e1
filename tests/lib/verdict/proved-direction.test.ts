import { describe, expect, it } from "vitest";
import { POLICY } from "@/lib/verdict/policy";
import { directionAt, type HeldEvidence, limitAfter, provedDirection } from "@/lib/verdict/proved-direction";

const held = (logBayesFactor: number, directionUp: number, limit = 2): HeldEvidence => ({
  evidence: { logBayesFactor, directionUp },
  limit,
});
const none = (): null => null;

describe("provedDirection", () => {
  it("a look points one way from its limit on, if 95 of 100 of the change's weight does", () => {
    expect([held(2, 0.95), held(2, 0.05), held(1.99, 1), held(9, 0.94)].map((at) => directionAt(at, POLICY))).toEqual([
      "up",
      "down",
      null,
      null,
    ]);
    expect(directionAt({ evidence: null, limit: 2 }, POLICY)).toBeNull();
  });

  it("asks more of a look that stands alone: 2 + 1.5, and 2 after one that reached its own limit the same way", () => {
    const asks = (before: HeldEvidence | null, direction: "up" | "down" | null) =>
      limitAfter(held(2, 1), () => before, direction, POLICY);
    expect(asks(null, "up")).toBe(2 + POLICY.limitAlone);
    expect(asks(held(2.4, 1, 2.5), "up")).toBe(2 + POLICY.limitAlone);
    expect([asks(held(2.5, 1, 2.5), "up"), asks(held(2.5, 1, 2.5), null)]).toEqual([2, 2]);
    expect(asks(held(2.5, 0, 2.5), "up")).toBe(2 + POLICY.limitAlone);
  });

  it("proves by one look at 3.5, by two at 2, by none below; the look before is asked only where it matters", () => {
    let asked = 0;
    const before = () => {
      asked += 1;
      return held(2, 1);
    };
    expect(provedDirection(held(3.5, 1), before, POLICY)).toBe("up");
    expect(provedDirection(held(1.9, 1), before, POLICY)).toBeNull();
    expect(asked).toBe(0);
    expect(provedDirection(held(2, 1), before, POLICY)).toBe("up");
    expect(provedDirection(held(2, 0), before, POLICY)).toBeNull();
    expect(provedDirection(held(3.4, 1), none, POLICY)).toBeNull();
  });
});
