import { describe, expect, it } from "vitest";
import type { SaidPain } from "@/lib/domain/practice";
import type { StudentEvent } from "@/lib/domain/student";
import { stopFirst } from "@/lib/report/stop-first";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const event = (facts: Partial<StudentEvent>): StudentEvent => ({
  ...{ id: "e", kind: "pause", day: "2026-09-10", endDay: null, note: "", rebaselines: [] },
  ...facts,
});
const pain: SaidPain = { id: "p", day: "2026-09-11", place: "wrist", who: "", recordedAt: "" };
const say = (events: readonly StudentEvent[], said: readonly SaidPain[] | null = null) =>
  stopFirst(words, { events, pain: said, today: "2026-09-12" });

describe("why no drill is given today", () => {
  it.each([
    [{}, "goes on"],
    [{ endDay: "2026-09-12" }, "ends today"],
    [{ kind: "injury" as const }, "of an injury"],
  ])(
    "a pause %j that %s stands against it, with the line for a clinician",
    (facts: Partial<StudentEvent>, _why: string) => {
      const said = say([event(facts)]).join(" ");
      for (const word of ["A pause is in force", "no drill through it", "licensed clinician", "no diagnosis"])
        expect(said).toContain(word);
    },
  );

  it.each([
    [{ endDay: "2026-09-11" }, "ended yesterday"],
    [{ day: "2026-09-13" }, "begins tomorrow"],
    [{ kind: "break" as const }, "is a break and no pause for pain"],
  ])("one %j that %s does not", (facts: Partial<StudentEvent>, _why: string) => {
    expect(say([event(facts)])).toEqual([]);
  });

  it("what hurts is said with its place to whoever may know it, and to nobody else", () => {
    expect(say([], [pain]).join(" ")).toContain("hurts: wrist");
    expect(say([event({})], [pain])).toHaveLength(3);
    expect(say([event({ place: "wrist", kind: "injury" })]).join(" ")).not.toContain("wrist");
    expect([say([], []), say([], null)]).toEqual([[], []]);
  });
});
