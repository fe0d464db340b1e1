import { describe, expect, it } from "vitest";
import { CLUBS } from "@/lib/domain/club";
import { CLUB_KINDS, type ClubGroup, clubKindOf, isClubGroup } from "@/lib/domain/club-group";
import {
  type ClubGrouping,
  currentGroups,
  groupNow,
  groupOfClub,
  parseClubGrouping,
  SHORT_LIST,
  saidGroup,
} from "@/lib/domain/club-grouping";
import { mergeGroups, type Regrouping, renameGroup, splitGroup } from "@/lib/domain/regroup-clubs";

const made = (change: Regrouping) => {
  if (change.kind !== "ok") throw new Error(JSON.stringify(change.issues));
  return change;
};
const issuesOf = (change: Regrouping) =>
  change.kind === "ok" ? [] : change.issues.map(({ field, code }) => `${field} ${code}`);
const LONG = {
  group: "iron",
  firstName: "Middle irons",
  secondName: "Long irons",
  secondClubs: ["4i", "3i", "2i", "1i"],
  rest: "first",
} as const;
const WOODS = { first: "hybrid", second: "wood", name: "Long game", goalsOf: "second" } as const;
/** Every club stands in exactly one group in use. */
const whole = (grouping: ClubGrouping) =>
  currentGroups(grouping)
    .flatMap(({ clubs }) => clubs)
    .sort()
    .join() === [...CLUBS].sort().join();

describe("ids of club groups", () => {
  it("a group's kind is the longest that its id begins with", () => {
    expect(CLUB_KINDS.map(clubKindOf)).toEqual([...CLUB_KINDS]);
    expect(clubKindOf("short-iron-wedges")).toBe("short-iron");
    expect(clubKindOf("iron-long-irons")).toBe("iron");
    expect(["iron-", "ironing", "putter", ""].map(isClubGroup)).toEqual([false, false, false, false]);
    expect(() => clubKindOf("putter" as ClubGroup)).toThrow("putter");
  });
});

describe("the short list", () => {
  it("holds every club once, and a session belongs where it was said", () => {
    expect(whole(SHORT_LIST)).toBe(true);
    expect(groupNow(SHORT_LIST, "iron", "7-iron")).toBe("iron");
    expect(groupNow(SHORT_LIST, "iron", null)).toBe("iron");
    // The file's group holds although the club is of another one.
    expect(groupNow(SHORT_LIST, "iron", "9-iron")).toBe("iron");
    expect(() => groupNow(SHORT_LIST, "iron-none", null)).toThrow("iron-none");
  });
});

describe("a split", () => {
  const { grouping, from, to } = made(splitGroup(SHORT_LIST, LONG));
  const [middle, long] = to as [ClubGroup, ClubGroup];
  it("sends each session by its club, and those without one to the part chosen", () => {
    expect([from, to]).toEqual([["iron"], ["iron-middle-irons", "iron-long-irons"]]);
    expect(groupNow(grouping, "iron", "7-iron")).toBe(middle);
    expect(groupNow(grouping, "iron", "iron 3")).toBe(long);
    expect([null, "irons", "putter", "driver"].map((club) => groupNow(grouping, "iron", club))).toEqual([
      middle,
      middle,
      middle,
      middle,
    ]);
    expect(groupNow(made(splitGroup(SHORT_LIST, { ...LONG, rest: "second" })).grouping, "iron", null)).toBe(long);
    expect(whole(grouping)).toBe(true);
    expect(groupNow(grouping, "wood", "5-wood")).toBe("wood");
  });
  it("merged again, brings back the very group with its id, with and without a named club", () => {
    const back = made(mergeGroups(grouping, { first: middle, second: long, name: "Irons", goalsOf: "first" }));
    expect(back.to).toEqual(["iron"]);
    for (const club of [null, "7-iron", "3-iron"]) expect(groupNow(back.grouping, "iron", club)).toBe("iron");
    const again = made(splitGroup(back.grouping, { ...LONG, firstName: "Mid", secondName: "Long" }));
    expect(again.to).toEqual([middle, long]);
    expect(groupNow(again.grouping, long, null)).toBe(long);
  });
  it("of a part splits on, and sessions without a club follow the last choice", () => {
    const next = made(
      splitGroup(grouping, {
        group: middle,
        firstName: "Eights",
        secondName: "Sevens",
        secondClubs: ["7i"],
        rest: "second",
      }),
    );
    const [, sevens] = next.to as [ClubGroup, ClubGroup];
    expect(groupNow(next.grouping, "iron", null)).toBe(sevens);
    expect(groupNow(next.grouping, "iron", "5i")).toBe("iron-eights");
    expect(whole(next.grouping)).toBe(true);
  });
  it.each([
    [{ ...LONG, group: "putter" }, ["group not-a-group"]],
    [{ ...LONG, secondClubs: [] }, ["secondClubs no-club-moves"]],
    [{ ...LONG, secondClubs: ["8i", "7i", "6i", "5i", "4i", "3i", "2i", "1i"] }, ["secondClubs every-club-moves"]],
    [{ ...LONG, secondClubs: ["3w"] }, ["secondClubs not-its-club"]],
    [{ ...LONG, firstName: " " }, ["firstName name-missing"]],
    [{ ...LONG, secondName: "middle IRONS" }, ["secondName name-taken"]],
    [{ ...LONG, secondName: "Fairway woods" }, ["secondName name-taken"]],
  ] as const)("%j is refused: %j", (asked, issues) => expect(issuesOf(splitGroup(SHORT_LIST, asked))).toEqual(issues));
});

describe("a merge", () => {
  const merged = made(mergeGroups(SHORT_LIST, WOODS));
  it("takes both groups' sessions and the goals of the one chosen", () => {
    expect(merged.to).toEqual(["wood-long-game"]);
    expect(clubKindOf(merged.to[0] as ClubGroup)).toBe("wood");
    expect(merged.goalsFrom).toEqual([{ group: "wood-long-game", from: "wood" }]);
    for (const said of ["hybrid", "wood"] as const)
      for (const club of [null, "4h", "3-wood"]) expect(groupNow(merged.grouping, said, club)).toBe("wood-long-game");
    expect(whole(merged.grouping)).toBe(true);
  });
  it("split along its kinds, gives every session back to the group that was said, named club or none", () => {
    const back = made(
      splitGroup(merged.grouping, {
        group: "wood-long-game",
        firstName: "Woods",
        secondName: "Hybrids",
        secondClubs: ["9h", "8h", "7h", "6h", "5h", "4h", "3h", "2h"],
        rest: "first",
      }),
    );
    expect(back.to).toEqual(["wood", "hybrid"]);
    expect(groupNow(back.grouping, "hybrid", null)).toBe("hybrid");
    expect(groupNow(back.grouping, "wood", null)).toBe("wood");
  });
  it.each([
    [{ ...WOODS, second: "hybrid" }, ["second same-group"]],
    [{ ...WOODS, first: "x", second: "y" }, ["first not-a-group", "second not-a-group"]],
    [{ ...WOODS, name: "" }, ["name name-missing"]],
    [{ ...WOODS, name: "Driver" }, ["name name-taken"]],
  ] as const)("%j is refused: %j", (asked, issues) => expect(issuesOf(mergeGroups(SHORT_LIST, asked))).toEqual(issues));
});

describe("a name", () => {
  it("changes and nothing else does; another group's is refused", () => {
    const { grouping } = made(renameGroup(SHORT_LIST, { group: "driver", name: " Big stick " }));
    expect(currentGroups(grouping).map(({ id, name }) => [id, name])).toEqual([
      ["short-iron", null],
      ["iron", null],
      ["hybrid", null],
      ["wood", null],
      ["driver", "Big stick"],
    ]);
    expect(issuesOf(renameGroup(grouping, { group: "iron", name: "big STICK" }))).toEqual(["name name-taken"]);
    expect(issuesOf(renameGroup(grouping, { group: "none", name: "A" }))).toEqual(["group not-a-group"]);
  });
});

describe("what is kept of a session", () => {
  const { grouping } = made(splitGroup(SHORT_LIST, LONG));
  it("is the club's kind where the club tells as much, so that a later file means the same session", () => {
    expect(saidGroup(grouping, "iron-long-irons", "3-iron")).toBe("iron");
    expect(saidGroup(grouping, "iron-long-irons", null)).toBe("iron-long-irons");
    expect(saidGroup(grouping, "iron-long-irons", "7-iron")).toBe("iron-long-irons");
    expect(saidGroup(grouping, "driver", "7-iron")).toBe("driver");
  });
});

describe("any changes in a row", () => {
  it("120 random splits and merges leave every club in one group, and every session of every group ever said in one", () => {
    let state = 20_261_125;
    const next = (below: number): number => {
      state = (state * 48_271) % 2_147_483_647;
      return state % below;
    };
    let grouping: ClubGrouping = SHORT_LIST;
    let changed = 0;
    for (let step = 0; step < 120; step++) {
      const groups = currentGroups(grouping);
      const one = groups[next(groups.length)];
      const other = groups[next(groups.length)];
      if (!one || !other) continue;
      const change =
        next(2) === 0
          ? splitGroup(grouping, {
              group: one.id,
              firstName: `first ${step}`,
              secondName: `second ${step}`,
              secondClubs: one.clubs.filter(() => next(2) === 0),
              rest: next(2) === 0 ? "first" : "second",
            })
          : mergeGroups(grouping, { first: one.id, second: other.id, name: `merged ${step}`, goalsOf: "first" });
      if (change.kind !== "ok") continue;
      changed++;
      grouping = parseClubGrouping(JSON.stringify(change.grouping));
      expect(whole(grouping)).toBe(true);
      const current = new Set(currentGroups(grouping).map(({ id }) => id));
      for (const { id, clubs } of grouping) {
        expect(current.has(groupNow(grouping, id, null))).toBe(true);
        for (const club of clubs) {
          const now = groupNow(grouping, id, club);
          expect(now).toBe(groupOfClub(grouping, club));
        }
      }
    }
    expect(changed).toBeGreaterThan(45);
  });
});
