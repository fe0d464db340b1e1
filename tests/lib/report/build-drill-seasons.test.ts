import { describe, expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import type { Fundamental } from "@/lib/domain/fundamental";
import { buildDrillSeasons, type DrillSeason } from "@/lib/report/build-drill-seasons";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const hinge = BUILT_IN.find(({ id }) => id === "hinge") as Fundamental;
const film = (date: string, value: number, use = true) => ({ date, use, swings: [value - 1, value + 1] });
const season = (change: Partial<DrillSeason> = {}): DrillSeason => ({
  ...{ studentId: "s1", alias: "Ari", start: "2031-03-01", end: "2031-04-01", logged: 4 },
  films: [film("2031-02-01", 60), film("2031-02-20", 62), film("2031-03-20", 75), film("2031-03-25", 99, false)],
  goal: { low: 80, high: 100 },
  ...change,
});
const page = (...seasons: readonly DrillSeason[]) =>
  buildDrillSeasons(words, {
    ...{ drill: { id: "d1", name: "Gate" }, fundamental: hinge, clubGroup: "iron", grouping: [], groups: ["iron"] },
    ...{ seasons, unmeasured: 2 },
  });

describe("the page of one drill", () => {
  it("says of each student when, how much was logged, and what came before and after", () => {
    const made = page(season(), season({ studentId: "s2", alias: "Bea", end: null, films: [film("2031-02-01", 70)] }));
    expect(made.title).toBe("Gate: 2 students");
    expect(made.lede).toContain("2 more had it");
    expect(made.seasons?.table.rows.map(({ cells }) => cells)).toEqual([
      ["Ari", "1 Mar 2031", "1 Apr 2031", "4", "61.0°", "75.0°", "+14.0°"],
      ["Bea", "1 Mar 2031", "runs", "4", "–", "–", "no film after"],
    ]);
    expect(made.seasons?.table.rows[0]?.href).toBe("/students/s1/hinge?club=iron");
  });
  it("moves the seasons to one first day, leaves out what is set aside, and draws the band where all have the same", () => {
    const chart = page(season()).seasons?.chart;
    expect(chart?.lines[0]?.dots).toEqual([
      { at: -28, value: 60 },
      { at: -9, value: 62 },
      { at: 19, value: 75 },
    ]);
    expect(chart?.band).toEqual({ low: 80, high: 100 });
    const mixed = page(season(), season({ studentId: "s2", goal: { low: 70, high: null } })).seasons?.chart;
    expect(mixed?.band).toBeNull();
  });
  it("says that a line which turns there proves nothing, and nothing of a drill that nobody is measured on", () => {
    expect(page(season()).care.lines[0]).toMatch(/proves nothing/);
    expect(page().seasons).toBeNull();
    expect(page().title).toBe("Gate: nobody measured");
  });
});
