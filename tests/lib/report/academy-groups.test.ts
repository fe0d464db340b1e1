import { describe, expect, it } from "vitest";
import { academyGroups, type GroupsSource } from "@/lib/report/academy-groups";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const TODAY = "2031-06-01";

/** Twenty students: six left-handed, four of them under nine, the last two with a second coach. */
function source(over: Partial<GroupsSource> = {}): GroupsSource {
  const students = Array.from({ length: 20 }, (_, at) => ({
    ...{ id: `s${at}`, hand: at < 6 ? ("left" as const) : ("right" as const) },
    birthYear: at < 4 ? 2024 : 2017,
  }));
  return {
    ...{ students, today: TODAY, clubs: [{ value: "iron", label: "Irons" }], clubsOf: () => ["iron"] },
    coaches: [
      { value: "u1", label: "Ash" },
      { value: "u2", label: "Bay" },
    ],
    coachesOf: (id) => (id === "s18" || id === "s19" ? ["u2"] : ["u1"]),
    ...over,
  };
}

describe("groups of an academy", () => {
  it("offers what has five students, and never what leaves fewer when it is taken away", () => {
    const found = academyGroups(words, source());
    expect(found?.told.map(({ id, label, studentIds }) => [id, label, studentIds.size])).toEqual([
      ["hand-right", "Plays: right-handed", 14],
      ["hand-left", "Plays: left-handed", 6],
      ["club-iron", "Clubs: Irons", 20],
    ]);
    // Four under nine and so all the others, two with Bay and so all of Ash's.
    expect(found?.hidden).toBe(4);
  });

  it("cuts the roster to the same students", () => {
    const found = academyGroups(words, source({ coachesOf: (id) => (Number(id.slice(1)) < 9 ? ["u1"] : ["u2"]) }));
    expect(found?.told.map(({ view }) => view)).toContainEqual({ hand: "left" });
    expect(found?.told.map(({ view }) => view)).toContainEqual({ club: "iron" });
  });

  it("counts nothing of four", () => {
    expect(academyGroups(words, source({ students: source().students.slice(0, 4) }))).toBeNull();
  });

  it("a student without any film is in no group of clubs, and one alone hides that group", () => {
    const found = academyGroups(words, source({ clubsOf: (id) => (id === "s7" ? [] : ["iron"]) }));
    expect(found?.told.map(({ id }) => id)).toEqual(["hand-right", "hand-left"]);
  });
});
