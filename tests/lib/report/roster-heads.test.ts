import { describe, expect, it } from "vitest";
import { ROSTER_SORTS, type RosterSort } from "@/lib/domain/roster-view";
import { rosterHeads } from "@/lib/report/roster-heads";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");

const links = (current: RosterSort) =>
  ROSTER_SORTS.map((sort) => ({
    href: `/students?place=outside&sort=${sort}#roster`,
    label: words.say(`roster.sort.${sort}`),
    current: sort === current ? ("yes" as const) : ("no" as const),
  }));

const heads = (current: RosterSort) => {
  const { student, inHand, last } = rosterHeads(words, links(current));
  return [student, inHand, last].map(({ label, sorted, href }) => [label, sorted, /sort=(\w+)/.exec(href)?.[1]]);
};

describe("the heads of the roster's columns", () => {
  it("by need the column in hand says so; a press on each gives its own order", () => {
    expect(heads("work")).toEqual([
      ["Student", null, "name"],
      ["In hand", "other", "work"],
      ["Last film", null, "last"],
    ]);
  });

  it("by name it runs upward, by last film downward; the latter's second press turns it about and back", () => {
    expect(heads("name")[0]).toEqual(["Student", "ascending", "name"]);
    expect(heads("last")[2]).toEqual(["Last film", "descending", "stale"]);
    expect(heads("stale")[2]).toEqual(["Last film", "ascending", "last"]);
  });

  it("by an order that is no column's none of them is the current one", () => {
    for (const sort of ["proved", "open"] as const)
      expect(heads(sort).map(([, sorted]) => sorted)).toEqual([null, null, null]);
  });

  it("says what a press does, and leaves the link's filters as they are", () => {
    const { last } = rosterHeads(words, links("last"));
    expect(last.explains).toBe("sort by longest without a film");
    expect(last.href).toBe("/students?place=outside&sort=stale#roster");
  });

  it("an order without a link is a mistake of whoever calls", () => {
    expect(() => rosterHeads(words, links("work").slice(0, 2))).toThrow("no link for the order last");
  });
});
