import { describe, expect, it } from "vitest";
import type { AcademyGroup } from "@/lib/report/academy-groups";
import { buildSpread } from "@/lib/report/build-spread";
import type { SpreadSource } from "@/lib/report/spread-source";
import { wordsFor } from "@/lib/words/catalogue";
import { changedOf, levelOf, spreadSource } from "./made-spread";

const words = wordsFor("en");

const countedOf = (over: Partial<SpreadSource>) => {
  const page = buildSpread(words, spreadSource(over));
  if (page.counted === null) throw new Error("nothing counted");
  return { ...page.counted, title: page.title, lede: page.lede };
};

/** 90 ± 2 and 88 ± 2 lie inside 85 to 95; 84 and 96 on an edge; 80, 82 and 99 outside. */
const SEVEN = [90, 88, 84, 96, 80, 82, 99].map((level, at) => levelOf(`s${at}`, level));

const told = (id: string, over: Partial<AcademyGroup>): AcademyGroup => ({
  ...{ id, label: `group ${id}`, club: null, view: {} },
  studentIds: new Set(SEVEN.map(({ studentId }) => studentId)),
  ...over,
});

describe("one fundamental across an academy", () => {
  it("says first how many lie inside and outside their bands, and each number opens its students", () => {
    const { title, lede, levels } = countedOf({ tracks: SEVEN });
    expect(title).toBe("Wrist hinge: 2 of 7 inside their bands, 3 outside");
    expect(lede).toContain("7 students");
    expect(levels.heading).toBe("3 outside: 2 below the band, 1 above; 2 on an edge");
    expect(levels.table?.rows.map(({ cells }) => cells)).toEqual([
      ["Outside", "3"],
      ["On an edge", "2"],
      ["Inside", "2"],
    ]);
    expect(levels.table?.rows.map(({ ways }) => ways?.[1])).toEqual([
      "/students?place=outside&fundamental=hinge&sort=work#roster",
      "/students?place=edge&fundamental=hinge&sort=work#roster",
      "/students?place=inside&fundamental=hinge&sort=work#roster",
    ]);
    expect(levels.texts).toContain("The band is the same for all: 85 to 95°.");
    expect(levels.texts[0]).toContain("within ±2°");
  });

  it("draws every level once, at itself where one band holds for all", () => {
    const { chart } = countedOf({ tracks: [...SEVEN, levelOf("s7", null)] }).levels;
    expect(chart?.strips.map(({ label }) => label)).toEqual(["All clubs: 2 of 7 inside"]);
    expect(chart?.strips[0]?.dots.map(({ at, place }) => [at, place])).toEqual([
      [80, "outside"],
      [82, "outside"],
      [84, "edge"],
      [88, "inside"],
      [90, "inside"],
      [96, "edge"],
      [99, "outside"],
    ]);
    expect(chart?.edges.map(({ at, label }) => [at, label])).toEqual([
      [85, "85°"],
      [95, "95°"],
    ]);
    expect(chart?.legend.map(({ place }) => place)).toEqual(["inside", "edge", "outside"]);
    expect(chart?.sentence).toBe("7 levels of Wrist hinge: 2 inside, 2 on an edge, 3 outside.");
  });

  it("a level or a band that is missing is said, and isn't drawn beside those that have one", () => {
    const bare = levelOf("s8", 70, { goal: { low: null, high: null } });
    const { levels, title } = countedOf({ tracks: [...SEVEN, levelOf("s7", null), bare] });
    expect(levels.chart?.strips[0]?.dots).toHaveLength(7);
    expect(levels.texts.at(-1)).toMatch(/^2 more tracks have no level yet, or no band/);
    expect(title).toContain("2 of 7");
  });

  it("without any band it draws levels and holds them against nothing", () => {
    const { levels, title } = countedOf({
      tracks: SEVEN.map(({ studentId }, at) => levelOf(studentId, 80 + at, { goal: { low: null, high: null } })),
    });
    expect(title).toBe("Wrist hinge: no level is held against a band");
    expect(levels.heading).toBe("No goal band is set for it");
    expect(levels.table).toBeNull();
    expect(levels.chart).toMatchObject({ band: null, edges: [], legend: [{ place: "none" }] });
    expect(levels.chart?.strips[0]?.dots).toHaveLength(7);
  });

  it("where bands differ it says so, and a line whose dots share a band says which", () => {
    const wood = SEVEN.map(({ studentId }) => levelOf(studentId, 101, { club: "wood", goal: { low: 90, high: 100 } }));
    const groups = { hidden: 0, told: [told("club-iron", { club: "iron" }), told("club-wood", { club: "wood" })] };
    const { levels } = countedOf({ tracks: [...SEVEN, ...wood], groups });
    expect(levels.texts).toContainEqual(expect.stringMatching(/^Bands differ/));
    expect(levels.chart?.strips.map(({ label }) => label)).toEqual([
      "the irons (85 to 95°): 2 of 7 inside",
      "the woods (90 to 100°): 0 of 7 inside",
    ]);
    // 101 is one beyond its own 100, on a field of ten.
    expect(new Set(levels.chart?.strips[1]?.dots.map(({ at }) => at))).toEqual(new Set([11]));
    expect(levels.chart?.edges.map(({ label }) => label)).toEqual(["lower edge", "upper edge"]);
  });

  it("clubs that may not be told apart share a line", () => {
    const wood = SEVEN.map(({ studentId }) => levelOf(studentId, 91, { club: "wood" }));
    const { levels } = countedOf({
      tracks: [...SEVEN, ...wood],
      groups: { hidden: 1, told: [told("club-iron", { club: "iron" })] },
    });
    expect(levels.chart?.strips.map(({ label }) => label)).toEqual([
      "the irons: 2 of 7 inside",
      "Other clubs: 7 of 7 inside",
    ]);
  });

  it("counts each told group by clubs and age, and none while one is shown", () => {
    const young = told("age-9-12", { view: { age: "9-12" }, studentIds: new Set(["s0", "s1", "s2", "s3", "s4"]) });
    const groups = { hidden: 0, told: [told("hand-left", { view: { hand: "left" } }), young] };
    const { groups: part } = countedOf({ tracks: SEVEN, groups });
    expect(part?.table?.rows.map(({ cells }) => cells)).toEqual([["group age-9-12", "5", "2", "2", "1", "0"]]);
    expect(part?.table?.rows[0]).toMatchObject({
      href: "/academy/hinge?of=age-9-12",
      ways: [
        null,
        null,
        "/students?place=inside&fundamental=hinge&age=9-12&sort=work#roster",
        "/students?place=edge&fundamental=hinge&age=9-12&sort=work#roster",
        "/students?place=outside&fundamental=hinge&age=9-12&sort=work#roster",
        null,
      ],
    });
    const cut = countedOf({ tracks: SEVEN.slice(0, 5), groups, group: young });
    expect(cut.groups).toBeNull();
    expect(cut.filter).toMatchObject({ action: "/academy/hinge", state: expect.stringContaining("group age-9-12") });
    expect(cut.levels.chart?.files.picture.href).toBe("/api/academy/hinge/svg?of=age-9-12");
    expect(cut.levels.table?.rows[0]?.ways?.[1]).toContain("age=9-12");
  });

  it("of fewer than five it counts nothing, in the academy's words where the academy is as small", () => {
    const few = (here: number) => buildSpread(words, spreadSource({ tracks: SEVEN.slice(0, 4), groups: null, here }));
    expect(few(4)).toMatchObject({ title: "Fewer than five students are here", counted: null });
    expect(few(9)).toMatchObject({ title: "Wrist hinge: fewer than five students are measured", counted: null });
  });
});

describe("what was proved of it", () => {
  const SPRING = ["2031-05-01", "2031-05-04"] as const;
  const tracks = [
    changedOf("s1", "gain", SPRING),
    changedOf("s2", "gain", ["2031-05-20", "2031-06-01"]),
    changedOf("s3", "slip", SPRING),
    changedOf("s4", "gain", ["2031-02-01", "2031-03-31"]),
    changedOf("s5", "gain", SPRING, "alone"),
    levelOf("s6", 90, { verdict: { verdict: "steady" } }),
  ];

  it("counts changes of the season that stand on the list, and what is said of each track today", () => {
    const { moved } = countedOf({ tracks });
    expect(moved.heading).toBe("2 real gains and one slip since 20 Apr 2031");
    expect(moved.table?.rows.map(({ cells }) => cells)).toEqual([
      ["Real gain", "3"],
      ["Real slip", "1"],
      ["Moved", "0"],
      ["Holding", "1"],
      ["Not settled", "1"],
    ]);
    expect(moved.table?.rows[0]?.ways?.[1]).toBe("/students?verdict=gain&fundamental=hinge&sort=work#roster");
    expect(moved.table?.rows[2]?.ways?.[1]).toBeNull();
  });

  it("a drill ran with a gain if it did on any day of the gain's stretch", () => {
    const without = (start: string, end: string | null) =>
      countedOf({ tracks, givenTo: (id) => (id === "s1" ? [{ start, end }] : []) }).helped.texts.at(-1);
    const one = /^1 of the 2 real gains of this season came about while no drill/;
    const two = /^2 of the 2 real gains of this season came about while no drill/;
    expect(without("2031-05-04", null)).toMatch(one);
    expect(without("2031-03-01", "2031-05-01")).toMatch(one);
    expect(without("2031-05-05", null)).toMatch(two);
    expect(without("2031-03-01", "2031-04-30")).toMatch(two);
    const all = countedOf({ tracks, givenTo: () => [{ start: "2031-01-01", end: null }] });
    expect(all.helped.texts.at(-1)).toMatch(/^All 2 real gains of this season came about while a drill/);
  });

  it("what helped is in the comparison's own words, by name, and leads to it", () => {
    const row = (drill: string, says: string) => ({
      cells: [drill, "+1° (0 to +2°)", "12", "+3°", says],
      tone: "plain",
    });
    const table = {
      caption: "",
      columns: ["Drill", "More", "Students", "Plain", "Said"].map((label) => ({ label, align: "start" })),
      rows: [{ ...row("Rails", "Works here"), href: "/drills/d2?club=iron" }, row("Freeze", "Not settled")],
    };
    const compared = {
      ...{ lede: "Irons.", proved: { heading: "One drill works here", texts: ["Came back."] } },
      clubs: { label: "", links: [{ href: "/drills?for=hinge&club=iron", label: "irons", current: "yes" }] },
      evidence: { table },
    } as unknown as SpreadSource["compared"];
    const { helped } = countedOf({ tracks: SEVEN, compared });
    expect(helped.heading).toBe("One drill works here");
    expect(helped.table?.columns.map(({ label }) => label)).toEqual(["Drill", "Students", "Said"]);
    expect(helped.table?.rows.map(({ cells, href }) => [...cells, href])).toEqual([
      ["Freeze", "12", "Not settled", undefined],
      ["Rails", "12", "Works here", "/drills/d2?club=iron"],
    ]);
    expect(helped.links.map(({ href }) => href)).toEqual(["/drills?for=hinge&club=iron"]);
    expect(countedOf({ tracks: SEVEN }).helped).toMatchObject({
      heading: "No drill was given for it yet",
      table: null,
    });
  });
});
