import { describe, expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import type { FairFigures, FairStep } from "@/lib/domain/fair-test";
import { buildFairTests, type FairTestSource } from "@/lib/report/build-fair-tests";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const hinge = BUILT_IN.find(({ id }) => id === "hinge") ?? null;
const FIGURES: FairFigures = {
  ...{ says: "second", fraction: 1, estimate: 4, low: 1, high: 7, p: 0.004, orders: 5000, counted: "drawn" },
  ...{ have: [12, 11], missing: 1, version: "fair-1" },
};
const look = (change: Partial<FairFigures> = {}): FairStep => ({
  ...{ number: 1, kind: "look", figures: { ...FIGURES, ...change }, why: "", day: "2031-05-04", who: "Robin" },
  recordedAt: "2031-05-04T08:00:00.000Z",
});
const source = (...steps: readonly FairStep[]): FairTestSource => ({
  test: {
    ...{ id: "t", fundamentalId: "hinge", firstDrillId: "a", secondDrillId: "b", least: 4, spread: 6 },
    ...{ students: 24, looks: 2, days: 42, seed: "ab", day: "2031-01-02", who: "Robin", recordedAt: "x" },
  },
  ...{ draws: [], steps, drills: ["Gate", "Freeze"], fundamental: hinge },
});
const said = (change: Partial<FairFigures>) =>
  buildFairTests(words, { tests: [source(look(change))], today: "2031-05-05", done: null }).tests[0]?.said;

describe("what a look at a test by the lot says", () => {
  it("names the better drill first, with its gain and how rare that is by the lot alone", () => {
    expect(said({})).toBe(
      "Freeze works better than Gate: +4° nearer to the band (+1 to +7°), over 23 students. Were the two alike, the lot alone would bring as much in 4 of 1000 orders.",
    );
    expect(said({ says: "first", estimate: -4, low: -7, high: -1, p: 0.0002 })).toBe(
      "Gate works better than Freeze: +4° nearer to the band (+1 to +7°), over 23 students. Were the two alike, the lot alone would bring as much in 1 of 1000 orders.",
    );
  });
  it("says that neither does more, or that it can't be told, never that one is probably better", () => {
    expect(said({ says: "alike", estimate: 0.4, low: -2, high: 3 })).toBe(
      "Neither does more by 4°: Freeze against Gate 0° (−2 to +3°), over 23 students.",
    );
    expect(said({ says: "open", estimate: 2, low: null, high: 9 })).toBe(
      "It can’t be told yet: Freeze against Gate +2°, over 23 students.",
    );
  });
  it("shows no figure of under five students", () => {
    expect(said({ have: [2, 2] })).toBe("It can’t be told: only 4 students have films.");
  });
});

describe("the page of tests by the lot", () => {
  it("has those that run first, each look in a sentence, and no look before it is due", () => {
    const tests = [source(look()), source(look({ says: "open", fraction: 0.5 }))];
    const page = buildFairTests(words, { tests, today: "2031-05-05", done: "looked" });
    expect(page.title).toBe("One test by the lot runs");
    expect(page.tests.map(({ margin }) => margin)).toEqual(["Runs", "Over"]);
    expect(page.tests[0]?.looks[0]).toMatch(/^Look 1, 4 May 2031, 50 % of the plan in, one student without a film: /);
    expect(page.tests.flatMap(({ presses }) => presses.map(({ label }) => label))).toEqual([
      "End the test of Gate and Freeze for good",
    ]);
    expect(page.notices).toEqual(["The look is taken and kept."]);
  });
});
