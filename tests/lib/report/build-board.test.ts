import { describe, expect, it } from "vitest";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import type { AcademySource } from "@/lib/report/academy-source";
import { buildBoard } from "@/lib/report/build-board";
import { wordsFor } from "@/lib/words/catalogue";
import { track } from "./made-roster";

const words = wordsFor("en");
const changed = (studentId: string, verdict: "gain" | "slip") => {
  const day = "2031-05-02";
  const change = { verdict, moved: null, from: day, to: day, provedOn: day } as unknown as NonNullable<
    TrackVerdict["change"]
  >;
  const made = track("hinge", { settle: null, verdict, change, changes: [change], listed: true, position: "inside" });
  return { ...made, studentId };
};
const source = (over: Partial<AcademySource> = {}): AcademySource => ({
  ...{ academyName: "Gull Links", today: "2031-06-12", from: "2031-04-20", group: null, students: 40, stalled: 2 },
  groups: { told: [], hidden: 2 },
  tracks: [
    ...["a", "b", "c", "d", "e", "e"].map((id) => changed(id, "gain")),
    ...["f", "g", "h", "i"].map((id) => changed(id, "slip")),
  ],
  films: ["counted", "counted", "counted", "phone"],
  ...{ weeks: { films: 12, stalled: 8 }, fundamentals: [], recorded: [], leftOut: new Map() },
  ...over,
});
const valuesOf = (over: Partial<AcademySource> = {}) =>
  Object.fromEntries(buildBoard(words, source(over)).facts.map(({ name, value }) => [name, value]));

describe("the board sheet", () => {
  it("counts students, and of fewer than five says no number", () => {
    expect(valuesOf()).toEqual({
      "Students here": "40 students",
      "Filmed this season": "9 students",
      "With a real gain": "5 students",
      "With a real slip": "fewer than 5 students",
      "Not settled": "0 of 100",
      "Films that counted": "75 of 100",
    });
    expect(valuesOf({ tracks: [] })["With a real gain"]).toBe("none");
  });
  it("bears no name, no day and no group, in its words or its title", () => {
    const text = JSON.stringify(buildBoard(words, source()));
    expect(text).not.toMatch(/Gull|2031|May|iron|"[a-i]"/);
  });
  it("of an academy of fewer than five counts nothing", () => {
    const sheet = buildBoard(words, source({ groups: null, students: 4 }));
    expect([sheet.facts, sheet.title]).toEqual([[], "Fewer than five students are here"]);
  });
});
