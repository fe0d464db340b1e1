import { describe, expect, it } from "vitest";
import type { Asking } from "@/lib/domain/asking";
import { BUILT_IN } from "@/lib/domain/catalogue";
import type { ConditionalPlan, ExcludingPlan, SettlePlan, TrackVerdict } from "@/lib/domain/track-verdict";
import { buildSettle, saySettleCell } from "@/lib/report/build-settle";
import { cameraCare } from "@/lib/report/camera-care";
import type { FundamentalSource } from "@/lib/report/fundamental-source";
import { planOnOffer } from "@/lib/report/plan-on-offer";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const tilt = BUILT_IN.find((each) => each.id === "setup-tilt");
if (tilt === undefined) throw new Error("no such fundamental");

const NO_PLAN: SettlePlan = { none: "no-plan", sessionsToFirstLook: 0 };
const REAL: ConditionalPlan = {
  direction: "down",
  size: -5.2,
  probability: 0.36,
  sessions: 2,
  swingsEach: 5,
  captureSd: 1.5,
  chance: 0.833,
  chanceAnySize: 0.6,
};
const NOTHING: ExcludingPlan = { sessions: 8, swingsEach: 10, captureSd: 1.5, changeBelow: 4.21, chance: 0.8 };

function source(
  verdict: Partial<TrackVerdict>,
  asking: Asking | null = null,
  days: readonly string[] = [],
): FundamentalSource {
  const sessions = days.map((day) => ({
    session: { day },
    swings: Array.from({ length: 5 }, (_, at) => ({ number: at + 1, value: 0 })),
    captureSd: 1,
    apart: null,
  }));
  return {
    verdict: {
      verdict: "open",
      change: null,
      changeBelow: 9.3,
      settle: NO_PLAN,
      settleIfReal: null,
      settleIfNothing: NOTHING,
      usualCaptureSd: 3,
      ...verdict,
    },
    history: { fundamental: tilt, sessions, judged: {} },
    asking,
  } as unknown as FundamentalSource;
}

const planned: Asking = {
  studentId: "s",
  fundamentalId: "setup-tilt",
  clubGroup: "iron",
  state: "planned",
  day: "2026-05-02",
  who: "Coach Lark",
  plan: { sessions: 2, swingsEach: 5, captureSd: 1.5, chance: 0.83, after: "2026-05-01", ifReal: -5.2 },
};

describe("what would settle an open track", () => {
  it("if real: films on different days, swings each, the care this fundamental needs, the chance and its if", () => {
    const part = buildSettle(words, source({ settleIfReal: REAL }));
    expect(part?.heading).toBe("What would prove it, if it is real");
    expect(part?.texts[0]).toBe(
      "2 more films on different days, 5 swings each, with the phone set square to a stick and upright against a plumb line, would probably prove it (83 in 100) if it is at least as big as it looks (−5°). If it is smaller, we may never know.",
    );
    expect(part?.texts[1]).toBe("As things stand, the chance that it is that big is about 36 in 100.");
    expect(part?.asks.map((ask) => ask.state)).toEqual(["planned", "stopped"]);
  });
  it("nothing to prove: what the largest plan excludes, rounded up, beside what is known now", () => {
    const part = buildSettle(words, source({}));
    expect(part?.texts).toHaveLength(2);
    expect(part?.texts[1]).toMatch(
      /^If nothing has changed, 8 more films .* smaller than 4\.3°; .* smaller than 9\.3°\.$/,
    );
    expect(part?.asks.map((ask) => ask.state)).toEqual(["stopped"]);
  });
  it("a limit of 4.2 to come is not worth saying beside one of 4.5 now", () =>
    expect(buildSettle(words, source({ changeBelow: 4.5 }))?.texts).toHaveLength(1));
  it("where even eight films reach only 46 in 100 it says so and offers to stop", () => {
    const { direction, size, probability } = REAL;
    const part = buildSettle(
      words,
      source({ settleIfReal: { direction, size, probability, none: "no-plan", bestChance: 0.46 } }),
    );
    expect(part?.texts[0]).toMatch(/even 8 more films on different days, 10 swings each, .* only 46 times in 100/);
    expect(part?.asks.map((ask) => ask.state)).toEqual(["stopped"]);
  });
  it("a plan without an if comes before one with", () => {
    const settle = { sessions: 1, swingsEach: 3, captureSd: 3, chance: 0.9 };
    expect(buildSettle(words, source({ settle, settleIfReal: REAL }))?.texts).toEqual([
      "One more film, of 3 swings, would probably settle it (90 in 100) if it stays where it seems to be; if a change is smaller than it looks, we may never know.",
    ]);
    const verdict = source({ settle, settleIfReal: REAL }).verdict;
    expect(planOnOffer(verdict)).toBe(settle);
    expect(planOnOffer({ ...verdict, settle: NO_PLAN })).toBe(REAL);
  });
});

describe("a conditional plan that was taken", () => {
  it("waits for its films, and says the care again", () => {
    const part = buildSettle(words, source({ settleIfReal: REAL }, planned, ["2026-05-03"]));
    expect(part?.heading).toBe("1 of 2 planned films have come");
    expect(part?.texts[0]).toMatch(/5 swings each, with the phone set square to a stick/);
  });
  it.each([
    [4.8, "So it is not as big as it looked then (−5°)."],
    [5.5, "Whether it is as big as it looked then (−5°) stays open."],
  ])("followed, with any change now under %d: what that means for one of 5.2", (changeBelow, sentence) => {
    const part = buildSettle(words, source({ changeBelow }, planned, ["2026-05-03", "2026-05-09"]));
    expect(part?.heading).toBe("You did what was asked, and it is still not settled");
    expect(part?.texts.slice(1, 3)).toEqual([
      `If something has changed, it is by less than ${changeBelow}°.`,
      sentence,
    ]);
  });
});

describe("in a table", () => {
  it("a conditional plan carries its if", () => {
    const { history, verdict, asking } = source({ settleIfReal: REAL });
    expect(saySettleCell(words, { history, verdict, asking })).toBe(
      "2 more films, 5 swings each, with the phone set square to a stick and upright against a plumb line (83 in 100 if it is as big as it looks, −5°)",
    );
  });
});

describe("the care for the camera", () => {
  const careOf = (yaw: number, roll: number, offset: number) =>
    cameraCare({ captureSd: 1 }, 2, { sensitivity: { yaw, roll, offset } });
  it("is only that which moves the fundamental, and none where the plan counts on the usual error", () => {
    expect([careOf(0.7, 1, 0), careOf(0.7, 0, 0), careOf(0, 1, 0.1), careOf(0, 0, 1), careOf(0.1, 0.1, 0)]).toEqual([
      "yaw-roll",
      "yaw",
      "roll",
      "offset",
      "any",
    ]);
    expect(cameraCare({ captureSd: 2 }, 2, { sensitivity: { yaw: 1, roll: 1, offset: 0 } })).toBeNull();
  });
});
