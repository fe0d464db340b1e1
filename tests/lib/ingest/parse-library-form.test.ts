import { describe, expect, it } from "vitest";
import type { DrillDescription } from "@/lib/domain/drill-version";
import { type LibraryFormContext, parseLibraryForm } from "@/lib/ingest/parse-library-form";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const TODAY = "2031-05-10";

const WALL: DrillDescription = {
  ...{ name: "Wall at the hip", fundamentalId: "hip-sway", how: "Trail hip by a wall.", cautions: "", dose: "" },
  ...{ reps: 15, minutesADay: null, daysAWeek: 5, remeasureDays: 14, retiredOn: null },
};
const AS_IT_IS = {
  ...{ name: "Wall at the hip", fundamental: "hip-sway", how: "Trail hip by a wall.", cautions: "", dose: "" },
  ...{ reps: "15", minutes: "", daysAWeek: "5", remeasureDays: "14", offered: "yes", why: "It reads better." },
};
const context = (now: LibraryFormContext["now"]): LibraryFormContext => ({
  ...{ today: TODAY, fundamentals: ["hip-sway", "hinge"], now },
  others: [
    { name: "Gate", retiredOn: null },
    { name: "Freeze", retiredOn: "2031-01-01" },
  ],
});

function read(fields: Readonly<Record<string, string>>, now: LibraryFormContext["now"]) {
  const data = new FormData();
  for (const [name, value] of Object.entries(fields)) data.set(name, value);
  return parseLibraryForm(data, context(now));
}

function wrong(fields: Readonly<Record<string, string>>, now: LibraryFormContext["now"]) {
  const outcome = read(fields, now);
  if (outcome.kind === "ok") throw new Error("nothing is wrong with it");
  expect(outcome.issues.every(({ code }) => words.has(`form.issue.${code}`))).toBe(true);
  return outcome.issues.map(({ field, code }) => `${field} ${code}`);
}

describe("a form about a drill of the library (real FormData)", () => {
  it("a new one is offered, asks for no reason, and leaves out what wasn't said", () => {
    expect(read({ name: " Coin ", fundamental: "hinge", how: "On a coin.", offered: "no" }, null)).toEqual({
      kind: "ok",
      value: {
        becomes: {
          ...{ name: "Coin", fundamentalId: "hinge", how: "On a coin.", cautions: "", dose: "", retiredOn: null },
          ...{ reps: null, minutesADay: null, daysAWeek: null, remeasureDays: null },
        },
        why: "",
      },
    });
  });

  it("a name is taken once, however it is written; of one that is retired it says so", () => {
    const named = (name: string) => ({ name, fundamental: "hinge", how: "x" });
    expect(wrong(named("GATE"), null)).toEqual(["name library-name-taken"]);
    expect(wrong(named("freeze"), null)).toEqual(["name library-name-retired"]);
    expect(wrong(named(""), null)).toEqual(["name missing"]);
  });

  it("changed, it needs a reason and a change", () => {
    const now = { ...WALL, given: "yes" as const };
    expect(wrong(AS_IT_IS, now)).toEqual(["why library-same"]);
    expect(wrong({ ...AS_IT_IS, how: "Slower.", why: "" }, now)).toEqual(["why missing"]);
    expect(read({ ...AS_IT_IS, how: "Slower." }, now)).toEqual({
      kind: "ok",
      value: { becomes: { ...WALL, how: "Slower." }, why: "It reads better." },
    });
  });

  it("once given, what it is for stays, whatever a form says; before, it may be put right", () => {
    const other = { ...AS_IT_IS, fundamental: "hinge", how: "Slower." };
    const becomes = (given: "yes" | "no") => read(other, { ...WALL, given });
    expect(becomes("yes")).toMatchObject({ value: { becomes: { fundamentalId: "hip-sway" } } });
    expect(becomes("no")).toMatchObject({ value: { becomes: { fundamentalId: "hinge" } } });
  });

  it("offered no more from today on; its day stays when other things change later", () => {
    const no = { ...AS_IT_IS, offered: "no" };
    expect(read(no, { ...WALL, given: "yes" })).toMatchObject({ value: { becomes: { retiredOn: TODAY } } });
    const long = { ...WALL, retiredOn: "2031-02-01", given: "yes" as const };
    expect(read({ ...no, dose: "slowly" }, long)).toMatchObject({ value: { becomes: { retiredOn: "2031-02-01" } } });
    expect(read(AS_IT_IS, long)).toMatchObject({ value: { becomes: { retiredOn: null } } });
  });

  it("refuses figures that are no count, and a measure on the first day", () => {
    const now = { ...WALL, given: "no" as const };
    expect(wrong({ ...AS_IT_IS, reps: "many", daysAWeek: "8", remeasureDays: "0" }, now)).toEqual([
      "reps not-a-count",
      "daysAWeek not-a-count",
      "remeasureDays remeasure-early",
    ]);
  });
});
