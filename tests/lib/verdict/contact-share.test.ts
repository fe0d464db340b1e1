import { describe, expect, it } from "vitest";
import { WEAK_CORRELATION } from "@/lib/stats/group-counts";
import { logGamma } from "@/lib/stats/log-gamma";
import type { ContactCount } from "@/lib/verdict/contact-counts";
import { decideContact } from "@/lib/verdict/contact-share";
import { CONTACT_POLICY_VERSION } from "@/lib/verdict/contact-thresholds";
import { answerOf, expectNear } from "@/tests/reference/read-reference";

const counts = (solid: readonly number[], balls = 20): ContactCount[] =>
  solid.map((one, at) => ({ day: `2026-05-${String(at + 1).padStart(2, "0")}`, solid: one, balls }));
const RISEN = [7, 9, 8, 6, 8, 9, 7, 15, 14, 16, 15, 13, 16, 15];

describe("decideContact", () => {
  it("no session is too few of 1; three give a share and no question of change", () => {
    expect(decideContact([])).toEqual({ kind: "too-few", have: 0, need: 1 });
    const few = answerOf(decideContact(counts([8, 9, 7])));
    expect([few.evidence, few.change, few.claims]).toEqual([null, null, [null, null, null]]);
  });

  it("one session of 3 of 4: the share is that of the beta-binomial formula with gammas, integrated on 4000 points", () => {
    const beta = (a: number, b: number) => logGamma(a) + logGamma(b) - logGamma(a + b);
    let [total, mean] = [0, 0];
    for (let i = 0; i < 4000; i++) {
      const p = (i + 0.5) / 4000;
      for (const rho of WEAK_CORRELATION.correlations) {
        const size = (1 - rho) / rho;
        const chance = 4 * Math.exp(beta(3 + p * size, 1 + (1 - p) * size) - beta(p * size, (1 - p) * size));
        total += chance;
        mean += p * chance;
      }
    }
    expectNear(answerOf(decideContact(counts([3], 4))).now.estimate, mean / total, { abs: 1e-4 });
  });

  it("its interval is wider than a binomial one when days differ: 100 balls of which 2, 18, 3, 17, 10 a day are solid", () => {
    const { now, overDispersion } = answerOf(decideContact(counts([2, 18, 3, 17, 10])));
    expect(now.high95 - now.low95).toBeGreaterThan(2 * 1.96 * Math.sqrt(0.25 / 100) * 1.5);
    expect(now.low95).toBeLessThan(now.low80);
    expect(now.high80).toBeLessThan(now.high95);
    expect(overDispersion).toBeGreaterThan(0.15);
  });

  it("7.7 of 20 to 14.9 of 20 after the seventh session is proved, up, in days about the eighth, not before it", () => {
    const share = answerOf(decideContact(counts(RISEN)));
    expect(share.policyVersion).toBe(CONTACT_POLICY_VERSION);
    expect(share.change).toMatchObject({ direction: "up", from: "2026-05-07", to: "2026-05-09" });
    expect(share.change?.provedOn).toBe(`2026-05-${String((share.claims.at(-1)?.provedAt ?? 0) + 1).padStart(2, "0")}`);
    expect(share.claims.slice(0, 8)).toEqual(new Array(8).fill(null));
    expectNear(share.change?.before.estimate ?? 0, 54 / 140, { abs: 0.02 });
    expectNear(share.now.estimate, 104 / 140, { abs: 0.02 });
  });

  it("failures for solid strikes turn the direction and mirror the share; what a look said depends on no later one", () => {
    const up = answerOf(decideContact(counts(RISEN)));
    const down = answerOf(decideContact(counts(RISEN.map((solid) => 20 - solid))));
    expect(down.change?.direction).toBe("down");
    expectNear(down.now.low95, 1 - up.now.high95, { abs: 1e-6 });
    expect(answerOf(decideContact(counts(RISEN.slice(0, 11)))).claims).toEqual(up.claims.slice(0, 11));
  });

  it("days that differ alone prove nothing", () => {
    expect(answerOf(decideContact(counts([8, 9, 7, 8, 9, 8, 7, 9, 8, 8]))).change).toBeNull();
  });

  it("quotes the latest sessions that hold 25 balls, and all", () => {
    const { latest, all } = answerOf(decideContact(counts([5, 6, 7], 13)));
    expect(latest).toEqual({ solid: 13, balls: 26, sessions: 2, from: "2026-05-02" });
    expect(all).toEqual({ solid: 18, balls: 39, sessions: 3, from: "2026-05-01" });
  });
});
