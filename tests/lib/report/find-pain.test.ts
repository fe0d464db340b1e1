import { describe, expect, it } from "vitest";
import { findPain } from "@/lib/report/find-pain";
import { wordsFor } from "@/lib/words/catalogue";
import { source, student } from "./brief-parts";

const words = wordsFor("en");
const said = (studentId: string, day: string) => ({ id: `p-${studentId}`, studentId, day, place: "back" });
const students = [student("s1", "Ari"), student("s2", "Bea")];

describe("who said that it hurts", () => {
  it("within fourteen days (17 Aug is the 14th before 31 Aug), the latest first, with the day and the place", () => {
    const found = findPain(words, source(students, { pains: [said("s1", "2026-08-17"), said("s2", "2026-08-30")] }));
    expect(found.map(({ alias }) => alias)).toEqual(["Bea", "Ari"]);
    expect(found[0]?.say()).toBe("30 Aug: back.");
    expect(found[0]?.next?.().text).toContain("Pain stops every drill");
    expect(findPain(words, source(students, { pains: [said("s1", "2026-08-16")] }))).toEqual([]);
  });

  it("nothing is made up of what wasn't handed over, and nobody is named who isn't here", () => {
    expect(findPain(words, source(students))).toEqual([]);
    expect(findPain(words, source(students, { pains: [said("s9", "2026-08-30")] }))).toEqual([]);
  });

  it("a new word of pain is a new line: its key is that of the entry", () => {
    const [found] = findPain(words, source(students, { pains: [said("s1", "2026-08-20")] }));
    expect(found?.key).toBe("pain s1 p-s1");
  });
});
