import { describe, expect, it } from "vitest";
import type { Comparison } from "@/lib/drills/comparison";
import { type ComparedGroupsSource, comparedGroups, tellComparison } from "@/lib/report/compared-groups";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");

/** Twenty-four students, half of them left-handed: eight a drill, of Wall six, of Gate four and of Line none left-handed. */
const source: ComparedGroupsSource = {
  students: Array.from({ length: 24 }, (_, at) => ({
    ...{ id: `s${at}`, birthYear: null, hand: at < 12 ? ("left" as const) : ("right" as const) },
  })),
  ...{ coaches: [], coachesOf: () => [], today: "2031-06-01" },
  drillsOf: (id) => {
    const at = Number(id.slice(1));
    return at < 6 || at > 21 ? ["Wall"] : at < 10 || at > 17 ? ["Gate"] : at > 11 ? ["Line"] : [];
  },
};

describe("groups of a comparison", () => {
  const groups = comparedGroups(words, source);
  const told = (id: string) => {
    const group = groups?.told.find((each) => each.id === id);
    return group === undefined ? null : [...(groups?.drillsTold(group) ?? [])].sort();
  };

  it("are by hand, age and coach, each with the drills that give nobody away", () => {
    expect(groups?.told.map(({ id }) => id)).toContain("hand-left");
    // Two right-handed had Wall, four of each hand had Gate.
    expect(told("hand-left")).toEqual([]);
    expect(told("hand-right")).toEqual(["Line"]);
    const more = comparedGroups(words, { ...source, drillsOf: () => ["Wall"] });
    const left = more?.told.find(({ id }) => id === "hand-left");
    expect(left && [...(more?.drillsTold(left) ?? [])]).toEqual(["Wall"]);
  });

  it("are none where fewer than five are compared", () => {
    expect(comparedGroups(words, { ...source, students: source.students.slice(0, 4) })).toBeNull();
  });

  it("tell of a comparison what is told, in every part of it, and no caution about a few", () => {
    const of = (drill: string) => ({ drill }) as never;
    const comparison = {
      ...{ drills: [of("Wall"), of("Line")], beforeAfter: [of("Wall"), of("Line")], sensitivity: [of("Wall")] },
      caveats: [
        { code: "no-dose", count: 4 },
        { code: "overlap", count: 5 },
      ],
    } as unknown as Comparison;
    expect(tellComparison(comparison, new Set(["Line"]))).toEqual({
      ...{ drills: [of("Line")], beforeAfter: [of("Line")], sensitivity: [] },
      caveats: [{ code: "overlap", count: 5 }],
    });
  });
});
