import { describe, expect, it } from "vitest";
import { choosePriority, type WorkCircumstances } from "@/lib/verdict/choose-priority";
import { type ReleaseFacts, releases } from "@/lib/verdict/release-next";
import { type MadeStanding, madeWork } from "./made-work";

// Owned things of madeWork are owned since 2031-03-01.
const none = { drills: [] };
const choice = (fundamentalId: string, day: string) => ({ fundamentalId, day });
const drill = (fundamentalId: string, start: string) => ({ fundamentalId, start });

function found(
  standing: Readonly<Record<string, MadeStanding>>,
  facts: Partial<ReleaseFacts> = {},
  circumstances: Partial<WorkCircumstances> = {},
) {
  const items = madeWork(standing);
  const priority = choosePriority(items, { stop: null, chosenId: null, ...circumstances });
  const tracks = items.map(({ fundamental, verdict }) => ({
    fundamentalId: fundamental.id as string,
    ownedSince: verdict?.ownedSince ?? null,
  }));
  const release = releases(tracks, priority, {
    ...{ drills: [drill("trail-v", "2031-01-10")], chosen: [], bandDays: new Map(), asOf: "2031-03-05" },
    ...facts,
  });
  if (release === null) return null;
  return [release.released.map(({ fundamentalId }) => fundamentalId), release.next?.item.fundamental.id ?? null];
}

describe("what the owning rule releases", () => {
  const own = { "trail-v": "owned", hinge: "outside" } as const;
  it("what became owned after a drill for it; next comes what the order of work puts in hand", () =>
    expect(found(own)).toEqual([["trail-v"], "hinge"]));

  it.each([
    ["owned with nothing given for it before", { drills: [] }],
    ["a drill on the very day on which it was owned", { drills: [drill("trail-v", "2031-03-01")] }],
    ["chosen by the coach on the day on which it was owned", { ...none, chosen: [choice("trail-v", "2031-03-01")] }],
    ["something else chosen before", { ...none, chosen: [choice("hinge", "2031-01-10")] }],
    ["a drill for something else", { drills: [drill("hinge", "2031-01-10")] }],
    ["owned 43 days ago", { asOf: "2031-04-13" }],
    ["owned since a goal band began, which gained nothing", { bandDays: new Map([["trail-v", "2031-03-01"]]) }],
    ["the next one begun by a drill", { drills: [drill("trail-v", "2031-01-10"), drill("hinge", "2031-03-02")] }],
  ])("nothing: %s", (_name, facts) => expect(found(own, facts)).toBeNull());

  it("42 days after it is still told", () =>
    expect(found(own, { asOf: "2031-04-12" })).toEqual([["trail-v"], "hinge"]));
  it("an old drill for the next one is no beginning", () =>
    expect(found(own, { drills: [drill("trail-v", "2031-01-10"), drill("hinge", "2030-11-01")] })).toEqual([
      ["trail-v"],
      "hinge",
    ]));
  it("what the coach chose counts as worked on, and once it is owned the order of work has the word", () =>
    expect(found(own, { drills: [], chosen: [choice("trail-v", "2031-02-28")] }, { chosenId: "trail-v" })).toEqual([
      ["trail-v"],
      "hinge",
    ]));
  it("where nothing waits the release is told all the same", () =>
    expect(found({ "trail-v": "owned" })).toEqual([["trail-v"], null]));
  it("nothing while the work is stopped", () =>
    expect(found(own, {}, { stop: { kind: "pain", since: "2031-03-04", until: null } })).toBeNull());
});
