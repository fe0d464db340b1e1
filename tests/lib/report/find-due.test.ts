import { describe, expect, it } from "vitest";
import { findDue } from "@/lib/report/find-due";
import { wordsFor } from "@/lib/words/catalogue";
import { hurts, source, student } from "./brief-parts";

const words = wordsFor("en");
const promised = (studentId: string, alias: string, dueOn: string, remindedOn: string | null = null) => ({
  ...{ planId: `p-${studentId}`, studentId, clubGroup: "driver" as const, alias, dueOn, remindedOn },
});
const students = [student("s1", "Ari"), student("s2", "Bea")];

describe("films that were promised and haven't come", () => {
  it("the longest awaited first, with the day, how late, and the way to the plan in the clubs that were told", () => {
    const due = [promised("s1", "Ari", "2026-08-29"), promised("s2", "Bea", "2026-08-21", "2026-08-25")];
    const found = findDue(words, source(students, { due }));
    expect(found.map((each) => `${each.alias}: ${each.say()}`)).toEqual([
      "Bea: promised by 21 Aug, 10 days ago; reminded 25 Aug.",
      "Ari: promised by 29 Aug, 2 days ago.",
    ]);
    expect(found[0]?.fundamental?.href).toBe("/students/s2/plan?club=driver");
    expect(found[1]?.next?.().heading).toBe("Remind Ari of a film");
  });

  it("nobody whose work is stopped is reminded", () => {
    const due = [promised("s1", "Ari", "2026-08-29"), promised("s2", "Bea", "2026-08-21")];
    const [ari, bea] = [student("s1", "Ari"), student("s2", "Bea")];
    expect(findDue(words, source([hurts(ari), bea], { due })).map(({ alias }) => alias)).toEqual(["Bea"]);
  });

  it("dealt with, it comes back once it was reminded of", () => {
    const keys = [null, "2026-08-30"].map(
      (day) => findDue(words, source(students, { due: [promised("s1", "Ari", "2026-08-29", day)] }))[0]?.key,
    );
    expect(new Set(keys).size).toBe(2);
    expect(findDue(words, source(students))).toEqual([]);
  });
});
