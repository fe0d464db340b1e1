import { expect, it } from "vitest";
import { SHORT_LIST } from "@/lib/domain/club-grouping";
import { groupsSince } from "@/lib/domain/groups-since";
import { mergeGroups, type Regrouping, splitGroup } from "@/lib/domain/regroup-clubs";

const made = (change: Regrouping) => {
  if (change.kind !== "ok") throw new Error(JSON.stringify(change.issues));
  return change;
};

it("a group in use is itself, one that the academy never had is none", () => {
  expect(groupsSince(SHORT_LIST, "iron")).toEqual({ now: "iron", holding: ["iron"] });
  expect(groupsSince(SHORT_LIST, "iron-none")).toBeNull();
});

it("of one that was merged it is the merged one; of one that was split the rest’s part, and both hold clubs of it", () => {
  const asked = { first: "hybrid", second: "wood", name: "Long game", goalsOf: "second" } as const;
  const merged = made(mergeGroups(SHORT_LIST, asked));
  expect(groupsSince(merged.grouping, "hybrid")).toEqual({ now: merged.to[0], holding: merged.to });
  const parts = {
    group: "iron",
    firstName: "Middle",
    secondName: "Long",
    secondClubs: ["4i"],
    rest: "second",
  } as const;
  const split = made(splitGroup(SHORT_LIST, parts));
  const since = groupsSince(split.grouping, "iron");
  expect(since?.now).toBe(split.to[1]);
  expect([...(since?.holding ?? [])].sort()).toEqual([...split.to].sort());
});

it("follows from one change to the next", () => {
  const first = made(mergeGroups(SHORT_LIST, { first: "hybrid", second: "wood", name: "Long", goalsOf: "second" }));
  const again = { first: "driver", second: first.to[0] ?? "", name: "All woods", goalsOf: "first" } as const;
  const second = made(mergeGroups(first.grouping, again));
  expect(groupsSince(second.grouping, "wood")).toEqual({ now: second.to[0], holding: second.to });
});
