import { describe, expect, it } from "vitest";
import { findStalled } from "@/lib/report/find-stalled";
import { wordsFor } from "@/lib/words/catalogue";
import { change, drill, hurts, OUTSIDE, plain, source, student, track } from "./brief-parts";

const words = wordsFor("en");
const gain = (provedOn: string) => ({ verdict: "gain", listed: true, change: change("gain", provedOn) }) as const;
const sway = track("s1", "hip-sway", OUTSIDE);
const found = (tracks: Parameters<typeof student>[2], over: Parameters<typeof source>[1] = {}) =>
  findStalled(words, source([student("s1", "Ari", tracks)], over));

describe("no proved gain for eight weeks", () => {
  it("says where it is, how many films there were (2 after 6 Jul, the 56th day), and whether a drill runs", () => {
    const [ari] = found([sway], { drills: [drill("s1", "hip-sway")] });
    expect(plain(ari?.say() ?? "")).toMatch(
      /^outside, below by .*; 2 films in those weeks, none since 4 May, Freeze since 1 Jul\.$/,
    );
    expect(ari?.fundamental?.label).toBe("Hip sway, top");
    expect(found([sway])[0]?.say()).toContain("no drill recorded");
  });

  it("a listed gain within the 56 days ends it, on whatever fundamental; one of 6 Jul is the 56th day and doesn't", () => {
    expect(found([sway, track("s1", "hinge", gain("2026-07-07"))])).toEqual([]);
    expect(found([sway, track("s1", "hinge", gain("2026-07-06"))])[0]?.say()).toContain("last gain proved 6 Jul");
  });

  it("an unlisted gain is no proved one", () => {
    expect(found([sway, track("s1", "hinge", { ...gain("2026-08-03"), listed: false })])).toHaveLength(1);
  });

  it("nobody who is away, who wasn't filmed for eight weeks yet, who pauses, or who has nothing outside", () => {
    const days = (...own: string[]) => track("s1", "hip-sway", OUTSIDE, { days: own });
    expect(found([days("2026-05-04", "2026-07-10")])).toEqual([]);
    expect(found([days("2026-07-10", "2026-08-24")])).toEqual([]);
    expect(found([track("s1", "hip-sway")])).toEqual([]);
    expect(found([track("s1", "hip-sway", { position: "edge" })])).toEqual([]);
    expect(found([sway], { pauses: [{ studentId: "s1", day: "2026-08-25", endDay: null }] })).toEqual([]);
    expect(found([sway], { pauses: [{ studentId: "s1", day: "2026-08-01", endDay: null }] })).toHaveLength(1);
  });

  it("nor whose work is stopped", () => {
    expect(findStalled(words, source([hurts(student("s1", "Ari", [sway]))]))).toEqual([]);
  });

  it("nor whoever has a slip to be seen to first", () => {
    const slip = { ...OUTSIDE, verdict: "slip", listed: true, change: change("slip", "2026-06-01") } as const;
    expect(found([track("s1", "hip-sway", slip)])).toEqual([]);
  });

  it("whoever waits longest comes first", () => {
    const late = track("s2", "hip-sway", OUTSIDE, { days: ["2026-03-01", "2026-08-24"] });
    const all = findStalled(words, source([student("s1", "Ari", [sway]), student("s2", "Bea", [late])]));
    expect(all.map(({ alias }) => alias)).toEqual(["Bea", "Ari"]);
  });
});
