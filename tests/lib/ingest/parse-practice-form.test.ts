import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ASKED_BALLS, ASKED_MINUTES, parsePracticeForm } from "@/lib/ingest/parse-practice-form";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const days = ["2026-05-06", "2026-05-05", "2026-05-04"];
const drills = [{ id: "g1", start: "2026-05-05", end: null }];
const onFile = new Map([["2026-05-04", { minutes: 290, balls: 0 }]]);
type Entries = readonly (readonly [string, string])[];
const read = (entries: Entries) => {
  const data = new FormData();
  for (const [name, value] of entries) data.append(name, value);
  return parsePracticeForm(data, { days, drills, onFile });
};

describe("a form of practice (real FormData)", () => {
  it("takes several days at once, each with minutes, balls or both, and what holds of all of them", () => {
    const outcome = read([
      ["minutes.2026-05-05", "15"],
      ["balls.2026-05-06", "40"],
      ["minutes.2026-05-06", ""],
      ["drill", "g1"],
      ["felt", "hard"],
      ["source", "coach"],
    ]);
    const rest = { assignmentId: "g1", felt: "hard", source: "coach" };
    expect(outcome).toEqual({
      kind: "ok",
      value: [
        { day: "2026-05-06", minutes: null, balls: 40, ...rest },
        { day: "2026-05-05", minutes: 15, balls: null, ...rest },
      ],
    });
  });

  it.each([
    [[], ["minutes.2026-05-04 no-practice"]],
    [[["minutes.2026-05-06", "a lot"]], ["minutes.2026-05-06 not-a-count"]],
    [[["minutes.2026-05-06", "1441"]], ["minutes.2026-05-06 not-a-count"]],
    [[["balls.2026-05-06", "5001"]], ["balls.2026-05-06 not-a-count"]],
    [[["minutes.2026-05-06", "0"]], ["minutes.2026-05-06 practice-of-nothing"]],
    [[["minutes.2026-05-06", "301"]], ["minutes.2026-05-06 much-practice"]],
    [[["balls.2026-05-06", "1001"]], ["balls.2026-05-06 many-balls"]],
    [[["minutes.2026-05-04", "11"]], ["minutes.2026-05-04 much-practice"]],
    [
      [
        ["minutes.2026-05-04", "5"],
        ["drill", "g1"],
      ],
      ["drill drill-not-on-then"],
    ],
    [
      [
        ["minutes.2026-05-04", "5"],
        ["drill", "another’s"],
      ],
      ["drill not-a-choice"],
    ],
    [
      [
        ["minutes.2026-05-04", "5"],
        ["felt", "great"],
      ],
      ["felt not-a-choice"],
    ],
  ] as [Entries, string[]][])("%j is asked about in words: %j", (entries, issues) => {
    const outcome = read(entries);
    if (outcome.kind === "ok") throw new Error("taken");
    expect(outcome.issues.map(({ field, code }) => `${field} ${code}`)).toEqual(issues);
    for (const { code, args } of outcome.issues) expect(words.say(`form.issue.${code}`, args)).toMatch(/\w/);
  });

  it("2,000 hostile forms: never a crash, never a day that wasn't offered, never an unlikely day unasked", () => {
    const name = fc.oneof(
      fc.constantFrom(...days.flatMap((day) => [`minutes.${day}`, `balls.${day}`]), "drill", "felt", "source"),
      fc.constantFrom("minutes.2026-05-07", "minutes.__proto__", "balls.", "toString"),
    );
    const value = fc.oneof(fc.string(), fc.integer({ min: -5, max: 9999 }).map(String), fc.constantFrom("g1", "easy"));
    fc.assert(
      fc.property(fc.array(fc.tuple(name, value), { maxLength: 8 }), (entries) => {
        const outcome = read(entries);
        if (outcome.kind === "issues") {
          expect(outcome.issues.length).toBeGreaterThan(0);
          return;
        }
        for (const { day, minutes, balls } of outcome.value) {
          expect(days).toContain(day);
          expect(minutes ?? balls).not.toBeNull();
          expect((minutes ?? 0) <= ASKED_MINUTES && (balls ?? 0) <= ASKED_BALLS).toBe(true);
        }
      }),
      { numRuns: 2000, seed: 15 },
    );
  });
});
