import { describe, expect, it } from "vitest";
import { beginning } from "@/lib/report/beginning";
import { findBegin } from "@/lib/report/find-begin";
import { findBlocked } from "@/lib/report/find-blocked";
import { wordsFor } from "@/lib/words/catalogue";
import { hurts, source, student, track } from "./brief-parts";

const words = wordsFor("en");
/** The first of two films seven weeks ago, the other last week; one of them counts. */
const filmed = (id: string, marks: readonly ("used" | "aided" | "set-aside")[]) =>
  student(id, id, [track(id, "hinge", {}, { days: ["2026-07-13", "2026-08-24"], marks })]);
const names = (...students: Parameters<typeof source>[0]) =>
  beginning(source(students)).map(({ student: who }) => who.id);

describe("who stands at the beginning", () => {
  it("is whoever was filmed on fewer than two days, and isn't away or stopped", () => {
    const bare = { ...student("s0", "Wren"), since: "2026-08-20" };
    expect(names(bare, filmed("s1", ["aided", "used"]), filmed("s2", ["used", "used"]))).toEqual(["s0", "s1"]);
    expect(names(hurts(bare), { ...bare, since: "2026-05-01" }, filmed("s3", ["aided", "aided"]))).toEqual([]);
  });

  it.each([
    ["aided", "used"],
    ["set-aside", "used"],
    ["used", "aided"],
  ] as const)("with %s and then %s film it is said once, under the first films, that more are wanted", (...marks) => {
    const found = source([filmed("s1", marks)]);
    expect(findBegin(words, found)).toHaveLength(1);
    expect(findBlocked(words, found)).toEqual([]);
  });

  it("who is away or pauses is still told that few films count", () => {
    const pauses = [{ studentId: "s1", day: "2026-08-25", endDay: null }];
    const found = source([filmed("s1", ["aided", "used"])], { pauses });
    expect(findBegin(words, found)).toEqual([]);
    expect(findBlocked(words, found).map((each) => each.say())).toEqual([
      "One film that counts since 13 Jul. Four on different days are a first look.",
    ]);
  });
});
