import { describe, expect, it } from "vitest";
import { findAway } from "@/lib/report/find-away";
import { wordsFor } from "@/lib/words/catalogue";
import { hurts, source, student, track } from "./brief-parts";

const words = wordsFor("en");
const filmed = (id: string, alias: string, ...days: string[]) => student(id, alias, [track(id, "hinge", {}, { days })]);

describe("students not seen", () => {
  it("after more than six weeks: 19 Jul is 43 days before 31 Aug, 20 Jul is 42", () => {
    const found = findAway(words, source([filmed("s1", "Ari", "2026-07-20"), filmed("s2", "Bea", "2026-07-19")]));
    expect(found.map(({ alias }) => alias)).toEqual(["Bea"]);
    expect(found[0]?.say()).toBe("Last film 19 Jul: 6 weeks ago.");
  });

  it("after as many weeks as were chosen: 12 weeks are 84 days, so 7 Jun is seen no more and 8 Jun is", () => {
    const students = [filmed("s1", "Ari", "2026-06-08"), filmed("s2", "Bea", "2026-06-07")];
    expect(findAway(words, source(students, { weeks: 12 })).map(({ alias }) => alias)).toEqual(["Bea"]);
  });

  it("a student without any film counts from the day on which the record was begun", () => {
    expect(findAway(words, source([{ ...student("s1", "Ari"), since: "2026-08-01" }]))).toEqual([]);
    const [found] = findAway(words, source([{ ...student("s1", "Ari"), since: "2026-07-01" }]));
    expect(found?.say()).toBe("No film since the record was begun, 1 Jul: 8 weeks ago.");
  });

  it("who was seen last comes first, whoever pauses after all others and never as the next thing", () => {
    const students = [
      filmed("s1", "Ari", "2026-07-01"),
      filmed("s2", "Bea", "2026-06-01"),
      filmed("s3", "Cal", "2026-07-10"),
    ];
    const pauses = [{ studentId: "s3", day: "2026-07-12", endDay: "2026-09-15" }];
    const found = findAway(words, source(students, { pauses }));
    expect(found.map(({ alias }) => alias)).toEqual(["Ari", "Bea", "Cal"]);
    expect(found[2]?.say()).toBe("Last film 10 Jul: 7 weeks ago. On a pause from 12 Jul to 15 Sep.");
    expect(found.map(({ next }) => next === null)).toEqual([false, false, true]);
  });

  it("whose work is stopped is never the next thing: a film would be asked for", () => {
    const [found] = findAway(words, source([hurts(filmed("s1", "Ari", "2026-07-01"))]));
    expect([found?.alias, found?.next]).toEqual(["Ari", null]);
  });

  it("is never called a slip, and comes back after as long again", () => {
    const [found] = findAway(words, source([filmed("s1", "Ari", "2026-05-01")]));
    expect(JSON.stringify([found?.say(), found?.next?.()])).not.toMatch(/slip/i);
    expect(found?.key).toBe("away s1 2026-05-01 2");
  });
});
