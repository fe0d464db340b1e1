import { describe, expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import { buildAskPlan, sayAnswer } from "@/lib/report/build-ask-plan";
import type { FundamentalSource } from "@/lib/report/fundamental-source";
import type { PlanAnswer } from "@/lib/verdict/ask-plan";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const tilt = BUILT_IN.find((each) => each.id === "setup-tilt");
if (tilt === undefined) throw new Error("no such fundamental");

const ANSWER: PlanAnswer = {
  sessions: 3,
  swingsEach: 5,
  captureSd: 1.5,
  settles: 0.25,
  ifReal: { direction: "down", size: -5.2, probability: 0.36, proves: 0.875 },
  ifNothing: { changeBelow: 4.21, chance: 0.8 },
};
const said = (over: Partial<PlanAnswer>, changeBelow: number | null = 9.3) =>
  sayAnswer(words, { usualCaptureSd: 3, changeBelow }, tilt, { ...ANSWER, ...over });

function source(over: Partial<FundamentalSource> = {}, verdict: Partial<TrackVerdict> = {}): FundamentalSource {
  const cares = [
    { name: "usual", care: 1 },
    { name: "half", care: 0.5 },
  ] as const;
  return {
    verdict: {
      verdict: "open",
      change: null,
      changeBelow: 9.3,
      usualCaptureSd: 3,
      settle: null,
      settleIfReal: null,
      ...verdict,
    },
    history: { fundamental: tilt, clubGroup: "iron", studentId: "s" },
    asking: null,
    asked: { plan: { sessions: 3, swingsEach: 5, care: cares[1], cares }, answer: ANSWER },
    ...over,
  } as unknown as FundamentalSource;
}

describe("what films that somebody asks about would tell", () => {
  it("films on different days, then swings, then the care; each chance with its if", () => {
    const { plan, facts, enough } = said({});
    expect(plan).toMatch(/^3 more films on different days, 5 swings each, with the phone .*:$/);
    expect(facts.map(({ name, value }) => [name, value])).toEqual([
      ["Settle it, whatever is true", "25 in 100"],
      ["Prove it, if it is real", "88 in 100"],
      ["Bound it, if nothing has changed", "any change smaller than 4.3°"],
    ]);
    expect(facts[1]?.note).toBe("if it is at least as big as it looks (−5°); that it is so is about 36 in 100");
    expect(facts[2]?.note).toBe("80 in 100; so far smaller than 9.3°");
    expect(enough).toMatch(/prove it, if it is that big. If it is smaller, we may never know/);
  });

  it("none or all of a few drawn futures is no certainty", () => {
    expect(said({ settles: 0 }).facts[0]?.value).toBe("under 5 in 100");
    expect(said({ settles: 1 }).facts[0]?.value).toBe("over 95 in 100");
  });

  it("0.8 is enough to be asked for, 0.79 is not", () => {
    expect(said({ settles: 0.8 }).enough).toMatch(/worth asking for/);
    expect(said({ settles: 0.79, ifReal: null }).enough).toMatch(/not a plan/);
  });

  it("points nowhere: nothing is said of proving; too few films for a look: so it is said", () => {
    expect(said({ ifReal: null }).facts).toHaveLength(2);
    expect(said({ ifNothing: null }, null).facts.at(-1)?.value).toMatch(/first look takes four films/);
    expect(said({}, null).facts.at(-1)?.note).toBe("80 in 100");
  });

  it("one film is said as one", () => expect(said({ sessions: 1 }).plan).toMatch(/^One more film, of 5 swings/));
});

describe("the question", () => {
  it("each choice stands at what is asked about", () => {
    const part = buildAskPlan(words, source());
    expect(part?.choices.map(({ name, options, at }) => [name, options[at]?.value, options.length])).toEqual([
      ["films", "3", 8],
      ["swings", "5", 8],
      ["care", "half", 2],
    ]);
    expect(part?.choices[2]?.options.map(({ label }) => label)[0]).toBe("as it has stood (±\u00a06°)");
    expect(part?.hidden).toEqual([{ name: "club", value: "iron" }]);
  });

  it("films worth asking for can be planned, as they were answered; those on offer have a button already", () => {
    const { takes } = buildAskPlan(words, source())?.said ?? {};
    expect(Object.fromEntries(takes?.hidden.map(({ name, value }) => [name, value]) ?? [])).toMatchObject({
      ...{ studentId: "s", clubGroup: "iron", state: "planned" },
      ...{ films: "3", swings: "5", care: "half" },
    });
    const offered = { ...{ sessions: 3, swingsEach: 5, captureSd: 1.5 }, chance: 0.875 };
    const same = { direction: "down", size: -5.2, probability: 0.36, chanceAnySize: 0.6, ...offered } as const;
    expect(buildAskPlan(words, source({}, { settleIfReal: same }))?.said.takes).toBeNull();
  });

  it("isn't asked where nothing is, where asking was stopped, or where a change waits for the roster's list", () => {
    expect(buildAskPlan(words, source({ asked: null }))).toBeNull();
    expect(buildAskPlan(words, source({ asking: { state: "stopped" } as FundamentalSource["asking"] }))).toBeNull();
    const alone = { verdict: "gain", change: {} as TrackVerdict["change"], listed: false } as const;
    expect(buildAskPlan(words, source({}, alone))).toBeNull();
  });
});
