import { describe, expect, it } from "vitest";
import { parseDrillDecision, parseDrillForm, parseDrillStop } from "@/lib/ingest/parse-drill-form";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
type Entries = readonly (readonly [string, string])[];
const formOf = (entries: Entries): FormData => {
  const data = new FormData();
  for (const [name, value] of entries) data.set(name, value);
  return data;
};
const library = [{ id: "d1", name: "Wall at the hip", offered: "yes" as const }];
const read = (...more: Entries) =>
  parseDrillForm(formOf([["drill", "d1"], ["start", "2026-05-04"], ...more]), {
    ...{ today: "2026-05-10", library, fundamentals: ["hip-sway", "hinge"] },
  });

describe("a form that gives a drill (real FormData)", () => {
  it("takes one of the library with its dose in numbers and words, whatever stands in the fields of a new one", () => {
    const outcome = read(
      ["reps", "15"],
      ["daysAWeek", "5"],
      ["words", "slowly"],
      ["stop", "it is easy"],
      ["name", "x"],
    );
    if (outcome.kind !== "ok") throw new Error(JSON.stringify(outcome.issues));
    expect(outcome.value.drill).toEqual({ kind: "known", id: "d1" });
    expect(outcome.value.dose).toEqual({
      ...{ reps: 15, minutes: null, daysAWeek: 5, words: "slowly", stop: "it is easy" },
    });
    expect(outcome.value.remeasureOn).toBeNull();
    expect(read(["remeasureOn", "2026-05-25"])).toMatchObject({ value: { remeasureOn: "2026-05-25" } });
  });

  it("takes a new one with its name, its fundamental, how it goes and its cautions", () => {
    const outcome = read(["drill", "new"], ["name", "Rail"], ["fundamental", "hinge"], ["how", "Stop half way."]);
    expect(outcome).toMatchObject({
      value: { drill: { kind: "new", name: "Rail", fundamentalId: "hinge", how: "Stop half way.", cautions: "" } },
    });
  });

  it.each([
    [[["drill", "d9"]], ["drill not-a-choice", "name missing", "how missing"]],
    [[["drill", "new"]], ["name missing", "how missing"]],
    [
      [
        ["drill", "new"],
        ["name", " wall  at the HIP"],
        ["how", "So."],
      ],
      ["name drill-name-taken"],
    ],
    [[["start", "2026-05-11"]], ["start future-date"]],
    [[["start", ""]], ["start not-a-date"]],
    [[["daysAWeek", "8"]], ["daysAWeek not-a-count"]],
    [[["reps", "twenty"]], ["reps not-a-count"]],
    [[["minutes", "301"]], ["minutes not-a-count"]],
    [[["remeasureOn", "soon"]], ["remeasureOn not-a-date"]],
    [[["remeasureOn", "2026-05-04"]], ["remeasureOn remeasure-early"]],
    [[["remeasureOn", "2027-05-06"]], ["remeasureOn remeasure-late"]],
  ] as [Entries, string[]][])("%j is refused in words: %j", (entries, issues) => {
    const outcome = read(...entries);
    if (outcome.kind === "ok") throw new Error("taken");
    expect(outcome.issues.map(({ field, code }) => `${field} ${code}`)).toEqual(issues);
    for (const { code, args } of outcome.issues) expect(words.say(`form.issue.${code}`, args)).toMatch(/\w/);
  });
});

describe("a form that stops a drill (real FormData)", () => {
  const stop = (...entries: Entries) => parseDrillStop(formOf(entries), { today: "2026-05-10", start: "2026-05-04" });
  it("takes a day from the first to today, and a reason", () => {
    expect(stop(["end", "2026-05-04"], ["why", "rest"])).toEqual({
      kind: "ok",
      value: { end: "2026-05-04", why: "rest" },
    });
    expect(stop(["end", "2026-05-03"], ["why", "rest"])).toMatchObject({ issues: [{ code: "ends-before" }] });
    expect(stop(["end", "2026-05-11"])).toMatchObject({ issues: [{ code: "future-date" }, { code: "missing" }] });
  });
});

describe("a form that decides about a drill (real FormData)", () => {
  const decide = (...entries: Entries) => parseDrillDecision(formOf(entries), { today: "2026-05-25" });
  it.each([
    ["keep", "2026-06-15"],
    ["change-goal", "2026-06-15"],
    ["change-drill", null],
    ["stop", null],
  ])("%s goes on until %s; a day of a form that ends it isn't read", (decision, next) => {
    expect(decide(["decision", decision], ["why", "so"], ["next", "2026-06-15"])).toEqual({
      kind: "ok",
      value: { decision, why: "so", next },
    });
  });

  it.each([
    [[], ["decision missing", "why missing", "next missing"]],
    [
      [
        ["decision", "praise"],
        ["why", "so"],
        ["next", "2026-06-15"],
      ],
      ["decision not-a-choice"],
    ],
    [
      [
        ["decision", "keep"],
        ["why", "so"],
      ],
      ["next missing"],
    ],
    [
      [
        ["decision", "keep"],
        ["why", "so"],
        ["next", "2026-05-25"],
      ],
      ["next remeasure-early"],
    ],
    [
      [
        ["decision", "stop"],
        ["why", " "],
      ],
      ["why missing"],
    ],
  ] as [Entries, string[]][])("%j is refused in words: %j", (entries, issues) => {
    const outcome = decide(...entries);
    if (outcome.kind === "ok") throw new Error("taken");
    expect(outcome.issues.map(({ field, code }) => `${field} ${code}`)).toEqual(issues);
    for (const { code, args } of outcome.issues) expect(words.say(`form.issue.${code}`, args)).toMatch(/\w/);
  });
});
