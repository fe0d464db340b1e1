import { describe, expect, it } from "vitest";
import { type RosterView, rosterQuery, WHOLE_ROSTER } from "@/lib/domain/roster-view";
import { buildRosterTools, type ToolsSource } from "@/lib/report/build-roster-tools";
import { filterRoster } from "@/lib/report/filter-roster";
import { wordsFor } from "@/lib/words/catalogue";
import { facts, student, track, viewOf } from "./made-roster";

const everybody = [student("Dot", "2026-09-01", [track("hinge", {})]), student("Ivo", "2026-06-01")];
const coaches = [
  { value: "lark", label: "Coach Lark" },
  { value: "wren", label: "Coach Wren" },
];

function tools(view: RosterView, over: Partial<ToolsSource> = {}) {
  return buildRosterTools(wordsFor("en"), {
    ...{ view, kept: null, openedKept: "no", total: everybody.length, coaches, clubs: [] },
    left: filterRoster(everybody, view, facts()),
    fundamentals: [{ value: "hinge", label: "Wrist hinge" }],
    ...over,
  });
}

describe("the form", () => {
  it("holds what is asked for, and is folded where nothing but a name is", () => {
    const made = tools(viewOf({ q: "d", sort: "last", second: "open" }));
    expect([made.search.value, made.more.open]).toEqual(["d", "no"]);
    const values = Object.fromEntries(made.more.fields.map(({ name, value }) => [name, value]));
    expect(values).toEqual({
      place: "",
      verdict: "",
      fundamental: "",
      show: "",
      coach: "",
      stale: "",
      age: "",
      hand: "",
      sort: "last",
      second: "open",
    });
    expect(tools(viewOf({ fundamental: "hinge" })).more.open).toBe("yes");
  });

  it("asks for a coach or clubs only where there is a choice", () => {
    const names = (over: Partial<ToolsSource>) => tools(WHOLE_ROSTER, over).more.fields.map(({ name }) => name);
    expect(names({ coaches: coaches.slice(0, 1) })).not.toContain("coach");
    expect(names({ clubs: [{ value: "iron", label: "Irons" }] })).not.toContain("club");
  });

  it("every choice is in words", () => {
    for (const field of tools(WHOLE_ROSTER).more.fields)
      for (const option of field.options) expect(option.label).toMatch(/\p{L}/u);
  });

  it("whoever has left stays shown", () => {
    expect(tools(viewOf({ who: "all" })).hidden).toEqual([{ name: "who", value: "all" }]);
    expect(tools(WHOLE_ROSTER).hidden).toEqual([]);
  });
});

describe("what it came to", () => {
  it("says how many of how many in which order, and drops each filter by a link", () => {
    const made = tools(viewOf({ fundamental: "hinge", stale: 28, q: "o", sort: "name", second: "last" }), {
      left: { entries: everybody.slice(0, 1), without: [] },
    });
    expect(made.state).toBe("1 of 2 students, by name, then by last film");
    expect(made.filters).toEqual([
      { href: "/students?fundamental=hinge&stale=28&sort=name&second=last#roster", label: "without the name “o”" },
      { href: "/students?q=o&stale=28&sort=name&second=last#roster", label: "without “Fundamental: Wrist hinge”" },
      {
        href: "/students?q=o&fundamental=hinge&sort=name&second=last#roster",
        label: "without “Last film: none for 4 weeks or ever”",
      },
    ]);
    expect(tools(WHOLE_ROSTER)).toMatchObject({ state: "2 students, by need", filters: [], all: null });
  });

  it("a coach who isn't there any more is a filter without a name, not an error", () => {
    expect(tools(viewOf({ coach: "gone" })).filters[0]?.label).toBe("without “Coach in charge: nobody here”");
  });
});

describe("nobody left", () => {
  it("says which filter to drop and how many come back", () => {
    const { none } = tools(viewOf({ q: "ivo", fundamental: "hinge" }));
    expect(none?.text).toBe("There are 2 students here. One filter less shows:");
    expect(none?.ways).toEqual([
      { href: "/students?fundamental=hinge&sort=work#roster", label: "without the name “ivo”: one student" },
      { href: "/students?q=ivo&sort=work#roster", label: "without “Fundamental: Wrist hinge”: one student" },
    ]);
  });

  it("leads to everybody where no single filter is to blame", () => {
    const { none } = tools(viewOf({ q: "zoe", place: "inside" }));
    expect(none?.text).toBe("There are 2 students here. Leaving out one filter finds nobody either.");
    expect(none?.ways).toEqual([{ href: "/students?sort=work#roster", label: "All 2 students, by need" }]);
  });
});

describe("the view that a viewer keeps", () => {
  const mine = viewOf({ place: "outside", sort: "last" });
  const kept = rosterQuery(mine);

  it("nothing is offered for everybody by need, and a search is never kept", () => {
    expect(tools(WHOLE_ROSTER)).toMatchObject({ keep: null, forget: null, back: null, kept: "" });
    expect(tools(viewOf({ q: "dot" })).keep).toBeNull();
    expect(tools({ ...mine, q: "dot" }).keep?.query).toBe(kept);
  });

  it("opened in it, the page says so, and it can be forgotten", () => {
    const made = tools(mine, { kept, openedKept: "yes" });
    expect(made).toMatchObject({ kept: "This is the view that you keep.", keep: null, back: null });
    expect(made.forget).toBe("Forget my view");
  });

  it("from another view it leads back, and the other can be kept in its place, everybody too", () => {
    expect(tools(WHOLE_ROSTER, { kept })).toMatchObject({ back: { href: "/students" }, keep: { query: "sort=work" } });
    expect(tools(mine, { kept })).toMatchObject({ back: null, keep: null });
  });
});
