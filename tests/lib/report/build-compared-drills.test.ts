import { describe, expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import type { ClubGrouping } from "@/lib/domain/club-grouping";
import type { Fundamental } from "@/lib/domain/fundamental";
import { compareDrills } from "@/lib/drills/compare-drills";
import type { Comparison } from "@/lib/drills/comparison";
import { buildComparedDrills } from "@/lib/report/build-compared-drills";
import { POLICY } from "@/lib/verdict/policy";
import { wordsFor } from "@/lib/words/catalogue";
import { ACADEMIES, drawAcademy } from "../../calibration/drills-population";

const words = wordsFor("en");
const SWAY = BUILT_IN.find(({ id }) => id === "hip-sway") as Fundamental;

const pageOf = (comparison: Comparison, hiddenDrills = 0) =>
  buildComparedDrills(words, {
    ...{
      fundamental: SWAY,
      clubGroup: null,
      offered: [SWAY],
      ...{ clubGroups: [], groups: null, group: null, hiddenDrills },
      idOf: new Map([["Gate", "d1"]]),
      measured: comparison.students,
    },
    ...{ grouping: [] as unknown as ClubGrouping, today: "2026-09-12", comparison },
  });
const comparisonOf = (name: string, seed = 11) => {
  const academy = ACADEMIES.find((each) => each.name === name);
  if (academy === undefined) throw new Error(`no academy ${name}`);
  return compareDrills(drawAcademy(academy, seed), POLICY);
};

describe("the page that compares drills", () => {
  it("says first how many work, and shows every drill by its students with its doubt and the figure not to believe", () => {
    const comparison = comparisonOf("two of eight worth .8 U");
    const works = comparison.drills.filter(({ says }) => says === "works");
    expect(works.length).toBeGreaterThan(0);
    const page = pageOf(comparison);
    expect(page.title).toMatch(/^Hip sway.*more here than waiting$/);
    expect(page.proved?.items).toHaveLength(works.length);
    const { table, drawn } = page.evidence ?? { table: { rows: [] }, drawn: [] };
    expect(table.rows.map(({ cells }) => cells[0])).toEqual(comparison.drills.map(({ drill }) => drill));
    for (const [at, result] of comparison.drills.entries()) {
      expect(drawn[at]?.effect?.value ?? null).toBe(result.effect?.estimate ?? null);
      expect(drawn[at]?.look).toBe({ works: "works", "too-few": "few" }[result.says as string] ?? "plain");
    }
    expect(page.care?.texts.join(" ")).toContain("No page puts coaches in order");
    expect(page.method?.text).toContain("bad runs come back by themselves");
  });

  it("of a drill with fewer than five students no figure stands anywhere, not even how many they are", () => {
    const whole = comparisonOf("two of eight worth .8 U");
    const [first, ...rest] = whole.drills;
    if (first === undefined) throw new Error("no drill");
    const few = {
      ...first,
      students: 3,
      sessions: 17,
      effect: null,
      retained: null,
      retainedStudents: 0,
      bandShare: null,
      says: "too-few",
    } as const;
    const page = pageOf({ ...whole, drills: [few, ...rest] });
    const [row] = page.evidence?.table.rows ?? [];
    expect(row?.cells).toEqual([first.drill, "–", "under 5", "–", "Too few to tell: under five students"]);
    expect(page.evidence?.details.rows[0]?.cells).toEqual([first.drill, "–", "–", "–", "–"]);
    expect(page.evidence?.drawn[0]).toMatchObject({ effect: null, plain: null, look: "few" });
  });

  it("without students marked as waiting nothing is said to work, and it says why", () => {
    const whole = comparisonOf("two of eight worth .8 U");
    const { reference } = whole;
    if (reference.kind === "none") throw new Error("nobody waited");
    const drills = whole.drills.map((each) => ({
      ...each,
      says: "cant-tell" as const,
      against: "no-drill-recorded" as const,
    }));
    const page = pageOf({ ...whole, drills, reference: { ...reference, kind: "no-drill-recorded" } });
    expect(page.title).toMatch(/no drill can be told to work yet$/);
    expect(page.proved?.heading).toBe("Nothing is proved to work yet");
    expect(page.proved?.texts[0]).toContain("No drill recorded isn’t the same as no drill");
    expect(page.evidence?.legend[0]?.label).toBe("more than no drill recorded, 95 of 100");
  });

  it("with nobody to compare with, drills are measured against each other, and where none was given nothing is drawn", () => {
    const whole = comparisonOf("two of eight worth .8 U");
    const alone = { ...whole, reference: { kind: "none", have: 2, need: 8 } } as const;
    expect(pageOf(alone).proved?.texts[0]).toContain("8 are needed");
    const none = pageOf({ ...whole, drills: [], beforeAfter: [], sensitivity: [] });
    expect([none.title, none.evidence, none.proved]).toEqual([
      expect.stringMatching(/no drill was given yet$/),
      null,
      null,
    ]);
    expect(buildComparedDrills(words, { fundamental: null }).title).toBe("No drill was given yet");
  });

  it("says of drills that are left out that nothing may be told, and not that none was given", () => {
    const nothing = { ...compareDrills([], POLICY) };
    expect(pageOf(nothing).title).toMatch(/: no drill was given yet$/);
    expect(pageOf(nothing, 2).title).toMatch(/: of this group nothing may be told$/);
  });
});
