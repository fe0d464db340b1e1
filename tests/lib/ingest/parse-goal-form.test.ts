import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { GoalBand } from "@/lib/domain/goal-band";
import { type GoalContext, parseGoalForm } from "@/lib/ingest/parse-goal-form";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const hinge = BUILT_IN.find(({ id }) => id === "hinge") as Fundamental;
const band = (change: Partial<GoalBand> = {}): GoalBand => ({
  ...{ fundamentalId: "hinge", clubGroup: "iron", scope: "student", ageFrom: null, ageTo: null, studentId: "s1" },
  ...{ low: 80, high: 100, from: "2026-03-01", reason: "r" },
  ...change,
});
const context = (change: Partial<GoalContext> = {}): GoalContext => ({
  ...{
    page: "student",
    fundamental: hinge,
    studentId: "s1",
    today: "2026-09-12",
    bands: [],
    now: { low: 85, high: 95 },
  },
  ...change,
});
const good = { low: "82.5", high: "97", from: "2026-09-12", reason: "a long arm" };
function read(more: Readonly<Record<string, string>>, change: Partial<GoalContext> = {}) {
  const data = new FormData();
  for (const [name, value] of Object.entries({ ...good, ...more })) data.set(name, value);
  return parseGoalForm(data, context(change));
}
const codes = (more: Readonly<Record<string, string>>, change: Partial<GoalContext> = {}) => {
  const outcome = read(more, change);
  return outcome.kind === "ok" ? "ok" : outcome.issues.map(({ field, code }) => `${field} ${code}`);
};

describe("a goal band's form (real FormData)", () => {
  it("a student's band with both edges or with one, its unit written or not", () => {
    const value = { ageFrom: null, ageTo: null, scope: "student", from: "2026-09-12", reason: "a long arm" };
    expect(read({})).toEqual({ kind: "ok", value: { ...value, low: 82.5, high: 97 } });
    expect(read({ low: "82,5°", high: "" })).toEqual({ kind: "ok", value: { ...value, low: 82.5, high: null } });
    expect(read({ low: "", high: "97 deg" })).toEqual({ kind: "ok", value: { ...value, low: null, high: 97 } });
  });

  it("the academy's, and that of an age with both years included", () => {
    const academy = { page: "academy", studentId: null } as const;
    expect(read({}, academy)).toMatchObject({ value: { scope: "academy", ageFrom: null, ageTo: null } });
    const age = { reach: "age-range", ageFrom: "9", ageTo: "12" };
    expect(read(age, academy)).toMatchObject({ value: { scope: "age-range", ageFrom: 9, ageTo: 12 } });
    expect(codes({ ...age, ageTo: "8" }, academy)).toEqual(["ageTo goal-age-order"]);
    expect(codes({ ...age, ageFrom: "" }, academy)).toEqual(["ageFrom missing"]);
    expect(codes({ ageFrom: "9" }, academy)).toEqual(["ageFrom not-asked"]);
  });

  it.each([
    ["no edge", { low: "", high: "" }, ["low goal-no-edge"]],
    ["edges the wrong way round", { low: "97", high: "82.5" }, ["high goal-order"]],
    ["two edges alike", { low: "90", high: "90" }, ["high goal-order"]],
    ["words", { low: "about eighty" }, ["low goal-not-a-number"]],
    ["two ways to read it", { low: "1,234" }, ["low goal-two-readings"]],
    ["not a number at all", { high: "NaN" }, ["high goal-not-a-number"]],
    ["another unit", { low: "80 cm" }, ["low goal-unit"]],
    ["finer than what is printed", { low: "82.55" }, ["low goal-digits"]],
    ["beyond what anybody reaches", { high: "1e9" }, ["high goal-out-of-range"]],
    ["no reason", { reason: "  " }, ["reason missing"]],
    ["a reason without end", { reason: "x".repeat(301) }, ["reason too-long"]],
    ["no day", { from: "soon" }, ["from not-a-date"]],
    ["a day that doesn't exist", { from: "2026-02-30" }, ["from not-a-date"]],
    ["a day before the calendar", { from: "0001-01-01", datedBack: "yes" }, ["from goal-too-old"]],
    ["a day years ahead", { from: "2028-01-01" }, ["from too-far-ahead"]],
    ["an earlier day without a tick", { from: "2026-09-11" }, ["datedBack goal-dated-back"]],
    ["a word that isn't offered", { what: "remove" }, ["what not-a-choice"]],
    ["nothing to give back", { what: "back", low: "", high: "" }, ["what goal-nothing-back"]],
  ])("refuses %s", (_name, more, issues) => expect(codes(more)).toEqual(issues));

  it("an earlier day is taken with the tick, a later one up to a year ahead as it is", () => {
    expect(codes({ from: "2026-08-01", datedBack: "yes" })).toBe("ok");
    expect(codes({ from: "2027-09-12" })).toBe("ok");
  });

  it("begins no earlier than the one it stands in for, whoever's; another age's is no hindrance", () => {
    const back = { from: "2026-08-31", datedBack: "yes" };
    const bands = [band({ from: "2026-09-01" })];
    expect(codes(back, { bands })).toEqual(["from goal-before-latest"]);
    expect(codes({ ...back, from: "2026-09-01" }, { bands })).toBe("ok");
    const ages = [band({ scope: "age-range", studentId: null, ageFrom: 9, ageTo: 12, from: "2026-09-01" })];
    const academy = { page: "academy", studentId: null, bands: ages } as const;
    expect(codes({ ...back, reach: "age-range", ageFrom: "9", ageTo: "11" }, academy)).toBe("ok");
    expect(codes({ ...back, reach: "age-range", ageFrom: "9", ageTo: "12" }, academy)).toEqual([
      "from goal-before-latest",
    ]);
  });

  it("one planned by a slip for a year later is no hindrance, with the same edges, or to nothing of its own", () => {
    const slip = band({ from: "2027-03-01" });
    const same = { low: "80", high: "100" };
    expect(codes({ ...same, from: "2026-10-01" }, { bands: [slip] })).toBe("ok");
    expect(codes({ ...same, from: "2027-03-01" }, { bands: [slip] })).toEqual(["low goal-same"]);
    expect(codes(same, { bands: [band(), slip] })).toBe("ok");
    expect(codes({ what: "back", low: "", high: "" }, { bands: [slip] })).toBe("ok");
    const gone = { bands: [{ ...slip, replaced: true as const }] };
    expect(codes({ what: "back", low: "", high: "" }, gone)).toEqual(["what goal-nothing-back"]);
  });

  it("the same edges again are no new band, but after it was given back they are", () => {
    const bands = [band()];
    expect(codes({ low: "80", high: "100" }, { bands })).toEqual(["low goal-same"]);
    const back = [...bands, band({ low: null, high: null, from: "2026-04-01" })];
    expect(codes({ low: "80", high: "100" }, { bands: back })).toBe("ok");
    expect(codes({ what: "back", low: "", high: "" }, { bands: back })).toEqual(["what goal-nothing-back"]);
  });

  it("given back it has no edges; those that the form began with weren't typed", () => {
    const given = { bands: [band()], now: { low: 80, high: 100 } };
    const back = { kind: "ok", value: { low: null, high: null, scope: "student" } };
    expect(read({ what: "back", low: "", high: "" }, given)).toMatchObject(back);
    expect(read({ what: "back", low: "80", high: "100" }, given)).toMatchObject(back);
    expect(codes({ what: "back", low: "81", high: "" }, given)).toEqual(["low goal-back-with-edge"]);
  });

  it("whatever is typed, it is a band whose edges can be, or issues in words (500 forms)", () => {
    const text = fc.oneof(fc.string(), fc.constantFrom("80", "-5", "1,234", "85°", "٣", "1e309", "<b>", "\u202e90"));
    const fields = fc.record(
      {
        low: text,
        high: text,
        from: fc.oneof(text, fc.constant("2026-09-12")),
        reason: text,
        what: text,
        datedBack: text,
      },
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(fields, (more) => {
        const outcome = read(more as Record<string, string>);
        if (outcome.kind === "ok") {
          const { low, high } = outcome.value;
          expect(low !== null || high !== null).toBe(true);
          for (const edge of [low, high])
            if (edge !== null) expect(edge >= hinge.plausible.low && edge <= hinge.plausible.high).toBe(true);
        } else
          for (const { code, args } of outcome.issues)
            expect(words.say(`form.issue.${code}`, args).length).toBeGreaterThan(5);
      }),
      { seed: 11, numRuns: 500 },
    );
  });
});
