import { describe, expect, it } from "vitest";
import { filterRoster, type RosterFacts } from "@/lib/report/filter-roster";
import type { RosterStudent } from "@/lib/report/roster-source";
import { facts, proved, student, track, viewOf } from "./made-roster";

function names(entries: readonly RosterStudent[], view: Parameters<typeof viewOf>[0], over: Partial<RosterFacts> = {}) {
  return filterRoster(entries, viewOf(view), facts(over)).entries.map((entry) => entry.student.alias);
}

describe("a search", () => {
  const everybody = [student("Zoë B"), student("Åse"), student("Bo"), student("Anna Zoe")];

  it("finds parts of aliases without case or marks, every word somewhere", () => {
    expect(names(everybody, { q: "ZOE" })).toEqual(["Anna Zoe", "Zoë B"]);
    expect(names(everybody, { q: "ase" })).toEqual(["Åse"]);
    expect(names(everybody, { q: "b zoe" })).toEqual(["Zoë B"]);
    expect(names(everybody, { q: "%" })).toEqual([]);
  });
});

describe("filters over tracks", () => {
  const dot = student("Dot", "2026-09-01", [
    track("hinge", { position: "outside" }),
    proved("sway", "gain", "2026-08-01"),
  ]);
  const ivo = student("Ivo", "2026-09-01", [track("hinge", { position: "inside", verdict: "steady" })]);
  const everybody = [dot, ivo, student("New", null)];

  it("one and the same track answers word, place and fundamental", () => {
    expect(names(everybody, { fundamental: "hinge" })).toEqual(["Dot", "Ivo"]);
    expect(names(everybody, { fundamental: "hinge", place: "outside" })).toEqual(["Dot"]);
    expect(names(everybody, { fundamental: "hinge", verdict: "gain" })).toEqual([]);
    expect(names(everybody, { verdict: "gain" })).toEqual(["Dot"]);
    expect(names(everybody, { verdict: "steady", place: "inside" })).toEqual(["Ivo"]);
  });

  it("a proof that isn't on the list is not settled", () => {
    const alone = student("Alone", "2026-09-01", [track("hinge", { verdict: "gain", listed: false })]);
    expect(names([alone], { verdict: "gain" })).toEqual([]);
    expect(names([alone], { verdict: "open" })).toEqual(["Alone"]);
  });

  it("a club group is that of the tracks shown", () => {
    const driver = student("Fay", "2026-09-01", [track("hinge", {}, "driver")]);
    expect(names([dot, driver], { club: "driver" })).toEqual(["Fay"]);
    expect(names([dot, driver], { club: "wood" })).toEqual([]);
  });
});

describe("filters over students", () => {
  it("28 days without a film: the 28th day counts, the 27th doesn't, nor ever counts", () => {
    const everybody = [student("Kit", "2026-08-16"), student("Lou", "2026-08-15"), student("Never", null)];
    expect(names(everybody, { stale: 28 })).toEqual(["Lou", "Never"]);
  });

  it("by the coach in charge, by nobody, and by a list of the brief", () => {
    const everybody = [student("Bea"), student("Cal"), student("Eli")];
    const over = {
      coaches: new Map([
        ["bea", ["wren"]],
        ["cal", ["lark", "wren"]],
      ]),
      lists: new Map([["ready" as const, new Set(["eli"])]]),
    };
    expect(names(everybody, { coach: "wren" }, over)).toEqual(["Bea", "Cal"]);
    expect(names(everybody, { coach: "nobody" }, over)).toEqual(["Eli"]);
    expect(names(everybody, { show: "ready" }, over)).toEqual(["Eli"]);
    expect(names(everybody, { show: "due" }, over)).toEqual([]);
  });
});

describe("the order", () => {
  const a = student("A 10", "2026-09-01", [track("hinge", {}), track("sway", {})]);
  const b = student("A 9", null, [proved("hinge", "slip", "2026-08-01")]);
  const c = student("Éd", "2026-09-05", [proved("hinge", "gain", "2026-08-05"), track("sway", {})]);
  const everybody = [c, b, a];

  it("by name as people read them: 9 before 10, É among E", () => {
    expect(names([...everybody, student("Fay")], { sort: "name" })).toEqual(["A 9", "A 10", "Éd", "Fay"]);
  });

  it("by last film the latest first, by staleness whoever was never filmed first", () => {
    expect(names(everybody, { sort: "last" })).toEqual(["Éd", "A 10", "A 9"]);
    expect(names(everybody, { sort: "stale" })).toEqual(["A 9", "A 10", "Éd"]);
  });

  it("by latest proof on the list, and by how many are not settled", () => {
    expect(names(everybody, { sort: "proved" })).toEqual(["Éd", "A 9", "A 10"]);
    expect(names(everybody, { sort: "open" })).toEqual(["A 10", "Éd", "A 9"]);
  });

  it("by need, then by the second order, then by name", () => {
    const need = (entry: RosterStudent) => (entry.student.alias === "Éd" ? 1 : 0);
    expect(names(everybody, { sort: "work" }, { need })).toEqual(["A 9", "A 10", "Éd"]);
    expect(names(everybody, { sort: "work", second: "last" }, { need })).toEqual(["A 10", "A 9", "Éd"]);
  });

  it("doesn't hang on the order in which they come", () => {
    const views = [viewOf({ sort: "work" }), viewOf({ sort: "stale", second: "open" })];
    for (const view of views) {
      const one = filterRoster([a, b, c], view, facts()).entries;
      expect(filterRoster([c, a, b], view, facts()).entries).toEqual(one);
    }
  });
});

describe("nobody left", () => {
  const everybody = [student("Dot", "2026-09-01", [track("hinge", {})]), student("Ivo", "2026-06-01")];

  it("says how many each filter alone keeps away, the most first", () => {
    const { entries, without } = filterRoster(everybody, viewOf({ q: "o", fundamental: "hinge", stale: 84 }), facts());
    expect(entries).toEqual([]);
    expect(without).toEqual([
      { filter: "fundamental", count: 1 },
      { filter: "stale", count: 1 },
      { filter: "q", count: 0 },
    ]);
  });

  it("says nothing where somebody is left, or where nobody is there at all", () => {
    expect(filterRoster(everybody, viewOf({ q: "dot" }), facts()).without).toEqual([]);
    expect(filterRoster([], viewOf({}), facts())).toEqual({ entries: [], without: [] });
  });

  it("by age, by hand, and by what was proved since a month", () => {
    const of = (alias: string, over: { readonly birthYear: number | null; readonly hand: "left" | "right" }) => {
      const made = student(alias);
      return { ...made, student: { ...made.student, ...over } };
    };
    const everybody = [
      of("Ida", { birthYear: 2014, hand: "left" }),
      of("Jon", { birthYear: 2010, hand: "right" }),
      of("Ros", { birthYear: null, hand: "right" }),
    ];
    expect(names(everybody, { age: "9-12" })).toEqual(["Ida"]);
    expect(names(everybody, { age: "unknown" })).toEqual(["Ros"]);
    expect(names(everybody, { hand: "right" })).toEqual(["Jon", "Ros"]);
    const proved = (id: string) => new Set(id === "jon" ? ["gain-2026-05"] : []);
    expect(names(everybody, { since: "gain-2026-05" }, { proved })).toEqual(["Jon"]);
    expect(names(everybody, { since: "slip-2026-05" }, { proved })).toEqual([]);
    const counted = (id: string) => new Set(id === "ros" ? ["film-phone", "open-few"] : []);
    expect(names(everybody, { counted: "film-phone" }, { counted })).toEqual(["Ros"]);
    expect(names(everybody, { counted: "open-plan" }, { counted })).toEqual([]);
  });
});
