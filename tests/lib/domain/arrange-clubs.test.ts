import { describe, expect, it } from "vitest";
import { type ArrangedGroup, arrangeGroups } from "@/lib/domain/arrange-clubs";
import { CLUBS, clubsOfKind } from "@/lib/domain/club";
import { CLUB_KINDS } from "@/lib/domain/club-group";
import { currentGroups, groupNow, SHORT_LIST } from "@/lib/domain/club-grouping";

const short: readonly ArrangedGroup[] = CLUB_KINDS.map((kind, at) => ({
  field: String(at + 1),
  name: "",
  clubs: clubsOfKind(kind),
  kind,
}));
const issuesOf = (groups: readonly ArrangedGroup[]) => {
  const change = arrangeGroups(SHORT_LIST, groups);
  return change.kind === "ok" ? [] : change.issues.map(({ field, code, clubs }) => [field, code, ...clubs].join(" "));
};

describe("groups laid out anew, before the first session", () => {
  it("the short list as it stands is itself", () => {
    const change = arrangeGroups(SHORT_LIST, short);
    if (change.kind !== "ok") throw new Error("refused");
    expect(currentGroups(change.grouping)).toEqual(currentGroups(SHORT_LIST));
  });
  it("the 9-iron among the irons, hybrids with woods: clubs and kinds go where the list says", () => {
    const [wedges, irons, , , driver] = short as [
      ArrangedGroup,
      ArrangedGroup,
      ArrangedGroup,
      ArrangedGroup,
      ArrangedGroup,
    ];
    const change = arrangeGroups(SHORT_LIST, [
      { ...wedges, name: "Wedges", clubs: ["lw", "sw", "gw", "pw"] },
      { ...irons, name: "Nine and longer", clubs: ["9i", ...irons.clubs] },
      { field: "3", name: "Long game", clubs: [...clubsOfKind("hybrid"), ...clubsOfKind("wood")], kind: "hybrid" },
      driver,
    ]);
    if (change.kind !== "ok") throw new Error(JSON.stringify(change.issues));
    expect(change.to).toEqual(["short-iron-wedges", "iron-nine-and-longer", "hybrid-long-game", "driver"]);
    const now = (said: Parameters<typeof groupNow>[1], club: string | null) => groupNow(change.grouping, said, club);
    expect(now("short-iron", "9-iron")).toBe("iron-nine-and-longer");
    expect(now("short-iron", null)).toBe("short-iron-wedges");
    expect(now("iron", "irons")).toBe("iron-nine-and-longer");
    expect(now("wood", null)).toBe("hybrid-long-game");
    // Laid out anew once more, the short list comes back under its own ids.
    const back = arrangeGroups(change.grouping, short);
    if (back.kind !== "ok") throw new Error("refused");
    expect(back.to).toEqual([...CLUB_KINDS]);
  });
  it("a club twice, nowhere, no club, no name: each is named", () => {
    const [first, ...others] = short as [ArrangedGroup, ...ArrangedGroup[]];
    expect(issuesOf([{ ...first, clubs: [...first.clubs, "8i"] }, ...others])).toEqual([
      "name.1 name-missing",
      "clubs.2 club-twice 8i",
    ]);
    expect(issuesOf([{ ...first, name: "Wedges", clubs: first.clubs.slice(1) }, ...others])).toEqual([
      "clubs.5 clubs-left-over lw",
    ]);
    expect(issuesOf([...short, { field: "6", name: "Spare", clubs: [], kind: "iron" }])).toEqual(["clubs.6 no-clubs"]);
    expect(issuesOf([])).toEqual([`clubs.0 clubs-left-over ${CLUBS.join(" ")}`]);
  });
});
