import { describe, expect, it } from "vitest";
import { findFundamental } from "@/lib/domain/catalogue";
import { buildDoubt } from "@/lib/report/build-doubt";
import type { FundamentalSource } from "@/lib/report/fundamental-source";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const source = (camera: number, over: Partial<FundamentalSource> = {}) =>
  ({
    history: {
      fundamental: findFundamental("setup-tilt", []),
      sessions: Array.from({ length: 14 }, (_, i) => ({
        apart: i === 3 ? { kind: "set-aside", reason: "dark" } : null,
        captureSd: camera,
      })),
    },
    verdict: { errorBudget: { day: 1, swing: 2, reader: 1.5, camera } },
    squarePlan: null,
    ...over,
  }) as unknown as FundamentalSource;

describe("where the doubt comes from", () => {
  it("day 1, swing 2, reader 1.5, camera 2, five swings: sd 2.5, so ± 5 (4.9); the parts add up to 100 (worked example: SE 2.50)", () => {
    const found = buildDoubt(words, source(2));
    expect(found?.heading).toContain("5°");
    const shares = found?.parts.map((part) => Number.parseInt(part.shareLabel, 10)) ?? [];
    expect(shares.reduce((sum, share) => sum + share, 0)).toBe(100);
    // Camera 4 of 6.25.
    expect(shares[2]).toBe(64);
  });

  it("13 used films of variance 11.25, a checked one of 11.25 - 9 + .74 = 2.99: as much as 4 (13 x 2.99 / 11.25 = 3.5)", () => {
    expect(buildDoubt(words, source(3))?.square).toEqual([words.say("doubt.square", { have: 13, as: 4, fewer: 9 })]);
  });

  it("one film that a wrong phone spoils costs one: 12 checked ones and one of sd 12 tell as much as 13 (12 + .02)", () => {
    const spoilt = source(0.86);
    const sessions = spoilt.history.sessions.map((entry, i) => (i === 5 ? { ...entry, captureSd: 12 } : entry));
    const found = buildDoubt(words, { ...spoilt, history: { ...spoilt.history, sessions } } as FundamentalSource);
    expect(found?.square).toEqual([words.say("doubt.square.as-checked")]);
  });

  it("a checked phone has nothing to gain", () =>
    expect(buildDoubt(words, source(0.86))?.square).toEqual([words.say("doubt.square.as-checked")]));

  it("films that a check would save are said with the question that they answer", () => {
    const plan = (asItIs: number | null) => ({ squarePlan: { asItIs, checked: 2, question: "if-real" } as const });
    expect(buildDoubt(words, source(3, plan(5)))?.square[1]).toMatch(/2 more films: 3 fewer/);
    expect(buildDoubt(words, source(3, plan(null)))?.square[1]).toMatch(/no plan of up to eight would/);
  });

  it("without a budget there is no such part", () =>
    expect(buildDoubt(words, { ...source(3), verdict: { errorBudget: null } } as FundamentalSource)).toBeNull());
});
