import { describe, expect, it } from "vitest";
import type { LookTrack } from "@/lib/report/family-look-source";
import { familyShown } from "@/lib/report/family-shown";
import { lookTrack, type MadeVideo, withChange } from "./look-fixture";

const VIDEOS: readonly MadeVideo[] = [["2026-03-03", 1]];
const change = (says: "gain" | "slip", on: string, listed = true) =>
  withChange(says, ["2026-03-03", on], [9, 1], listed);
const ids = (tracks: readonly LookTrack[], inHand: string | null, reader: "young" | "other" = "other") => {
  const { pictured, strips } = familyShown(tracks, { inHand, reader, today: "2026-07-01" });
  return [pictured?.history.fundamental.id ?? null, strips.map(({ history }) => history.fundamental.id)];
};
const open = (id: string) => lookTrack(id, VIDEOS);

describe("what is drawn large", () => {
  it("is what is in hand, and all else is a strip in the order of work", () => {
    expect(ids([open("trail-v"), open("foot-line"), open("hinge")], "foot-line")).toEqual([
      ...["foot-line", ["trail-v", "hinge"]],
    ]);
  });

  it("where nothing is in hand, or nothing of it was measured, is the change that was told last, else the first", () => {
    const gain = lookTrack("foot-line", VIDEOS, change("gain", "2026-04-01"));
    const slip = lookTrack("hinge", VIDEOS, change("slip", "2026-05-01"));
    const alone = lookTrack("hip-sway", VIDEOS, change("gain", "2026-06-01", false));
    expect(ids([open("trail-v"), gain, slip, alone], null)[0]).toBe("hinge");
    expect(ids([open("trail-v"), gain, alone], "setup-tilt")[0]).toBe("foot-line");
    expect(ids([open("trail-v"), alone], null)[0]).toBe("trail-v");
    expect(ids([], "hinge")).toEqual([null, []]);
  });

  it("for the youngest is no slip, not even an old one, and with its strip makes two", () => {
    const slip = lookTrack("hinge", VIDEOS, change("slip", "2026-05-01"));
    const better = lookTrack("foot-line", VIDEOS, change("gain", "2026-04-01"));
    const owned = lookTrack("trail-v", VIDEOS, { verdict: "steady", ownedSince: "2026-03-03" });
    expect(ids([owned, better, open("setup-tilt"), slip], "hinge", "young")).toEqual(["foot-line", ["trail-v"]]);
    expect(ids([slip], "hinge", "young")).toEqual([null, []]);
    const back = { ...slip, verdict: { ...slip.verdict, ...change("gain", "2026-06-01") } };
    const after = {
      ...back,
      verdict: { ...back.verdict, changes: [...slip.verdict.changes, ...back.verdict.changes] },
    };
    const listedBefore = { ...after.verdict, looks: [{ date: "2026-05-02", verdict: "slip", listed: true }] } as never;
    expect(ids([{ ...after, verdict: listedBefore }], "hinge", "young")).toEqual([null, []]);
  });
});
