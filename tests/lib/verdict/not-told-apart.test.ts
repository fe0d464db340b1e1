import { describe, expect, it } from "vitest";
import type { JudgedTrack } from "@/lib/domain/judged-track";
import { judgeTrack } from "@/lib/verdict/judge-track";
import { noiseByName } from "@/lib/verdict/noise";
import { POLICY } from "@/lib/verdict/policy";
import { flat, madeTrack } from "./made-track";

const jump = [...flat(8, 0), ...flat(8, 12)];
const judged = (track: JudgedTrack) => judgeTrack(track, noiseByName([]), POLICY, "latest").verdict;

/** Sessions from `at` on are of a new reader or place. */
function shared(track: JudgedTrack, kind: "reader" | "captureSetup", at: number, captureSd = 1): JudgedTrack {
  return {
    ...track,
    sessions: track.sessions.map((session, i) => ({ ...session, captureSd, [kind]: i < at ? "first" : "second" })),
  };
}

describe("what a move can't be told apart from", () => {
  const track = madeTrack(7, jump, { better: "up", readerSd: 8 });

  it("a level that moves by 12 with one reader is proved", () => {
    expect(judged(track)).toMatchObject({ verdict: "gain", notToldApart: null });
  });

  it("the day the reader changes (offset sd 1.5 x 8 = 12): open, not told apart from the new reader", () => {
    const found = judged(shared(track, "reader", 8));
    expect(found).toMatchObject({ verdict: "open", notToldApart: { from: "reader", direction: "up" } });
    expect(found.notToldApart?.on).toBe(track.sessions[8]?.date);
    expect(found.settle).toEqual({ none: "not-told-apart", sessionsToFirstLook: 0 });
  });

  it("the day the phone gets a new place, with a camera sd of 6: open, never holding, not told apart from it", () => {
    const moved = { ...track, readerSd: 1 };
    const found = judged(shared(moved, "captureSetup", 8, 6));
    expect(found).toMatchObject({ verdict: "open", notToldApart: { from: "placement", direction: "up" } });
  });

  it("a flat level says nothing whoever reads it", () => {
    const quiet = madeTrack(8, flat(16, 0), { better: "up", readerSd: 8 });
    expect(judged(shared(quiet, "reader", 8)).notToldApart).toBeNull();
  });

  it("under four sessions: nothing", () => {
    expect(judged(shared(madeTrack(9, [0, 0, 12], {}), "reader", 2)).notToldApart).toBeNull();
  });
});
