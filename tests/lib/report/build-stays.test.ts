import { describe, expect, it } from "vitest";
import type { Practice } from "@/lib/domain/practice";
import { buildStays } from "@/lib/report/build-stays";
import { retentionOf } from "@/lib/report/retention-of";
import { wordsFor } from "@/lib/words/catalogue";
import { filmOf, GAIN, trackOf } from "./made-drill-track";

const words = wordsFor("en");
const drill = { id: "g", drill: "Freeze", fundamentalId: "hinge", start: "2026-07-20", end: null, dose: "" };
const logged = (day: string): Practice =>
  ({ id: day, day, assignmentId: "g", minutes: 10, voidedAt: null }) as Practice;
const before = filmOf("2026-07-01", 80, 20);

describe("whether a gain stays, on the page of a fundamental", () => {
  it("says held of a film nine days after practice at the new level, with its reason and source", () => {
    const said = buildStays(words, {
      ...trackOf([before, filmOf("2026-08-19", 88, 9)]),
      drills: [],
      today: "2026-09-12",
    });
    expect(said?.sentence).toBe("Held 9 days after the last practice, on one film: it stays without practice.");
    expect(said?.detail.join(" ")).toContain("Guadagnoli");
  });

  it("films before the new level stood and films in a lesson count for nothing", () => {
    const films = [before, filmOf("2026-08-09", 88, 9), filmOf("2026-08-19", 88, 9, "lesson")];
    expect(buildStays(words, { ...trackOf(films), drills: [], today: "2026-09-12" })?.sentence).toMatch(
      /^No film counts since then/,
    );
  });

  it("the log of practice says it where the film doesn’t, from the drill’s first day on", () => {
    const track = trackOf([before, filmOf("2026-08-19", 88)]);
    const of = (days: readonly string[], drills = [drill]) =>
      retentionOf({ ...track, practice: days.map(logged), drills, rest: 7 });
    expect(of(["2026-08-10"])).toMatchObject({ kind: "held", least: 9, by: "logged" });
    expect(of(["2026-08-18"])).toMatchObject({ kind: "soon", most: 1 });
    expect(of(["2026-07-10"])).toMatchObject({ kind: "unknown" });
    expect(of(["2026-07-10"], [{ ...drill, fundamentalId: "hip-sway" }])).toMatchObject({ kind: "held", least: 40 });
    expect(of([], [])).toMatchObject({ kind: "unknown" });
  });

  it("is no question of a gain that isn’t on the roster’s list: it is told as none", () => {
    const films = [before, filmOf("2026-08-19", 88, 9)];
    for (const listed of [false, undefined]) {
      const alone = trackOf(films, { listed });
      expect(buildStays(words, { ...alone, drills: [], today: "2026-09-12" })).toBeNull();
      expect(retentionOf({ ...alone, practice: [], drills: [], rest: 7 })).toBeNull();
    }
  });

  it("is no question without a proved gain", () => {
    const films = [before, filmOf("2026-08-19", 88, 9)];
    expect(buildStays(words, { ...trackOf(films, { change: null }), drills: [], today: "2026-09-12" })).toBeNull();
    expect(
      buildStays(words, {
        ...trackOf(films, { change: { ...GAIN, verdict: "slip" } }),
        drills: [],
        today: "2026-09-12",
      }),
    ).toBeNull();
  });
});
