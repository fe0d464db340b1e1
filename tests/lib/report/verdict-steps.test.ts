import { describe, expect, it } from "vitest";
import type { ProvedChange, TrackVerdict } from "@/lib/domain/track-verdict";
import { verdictSteps } from "@/lib/report/verdict-steps";

const open = {
  verdict: "open",
  moved: null,
  change: null,
  changes: [],
  watch: null,
  ownedSince: null,
  position: "edge",
  listed: false,
} as unknown as TrackVerdict;
const change = { verdict: "gain", moved: null } as unknown as ProvedChange;
const gain: TrackVerdict = { ...open, verdict: "gain", change, changes: [change], listed: true };
const watch = { sessions: 2 } as unknown as TrackVerdict["watch"];

describe("verdictSteps", () => {
  it("says nothing where nothing changed", () => {
    expect(verdictSteps(open, { ...open })).toEqual([]);
    expect(verdictSteps(gain, { ...gain })).toEqual([]);
  });

  it("says a gain only of a track on the roster's list, else that it is proved for its track alone", () => {
    expect(verdictSteps(open, gain)).toEqual(["gain"]);
    expect(verdictSteps(open, { ...gain, listed: false })).toEqual(["alone"]);
    expect(verdictSteps({ ...gain, listed: false }, gain)).toEqual(["gain"]);
    expect(verdictSteps({ ...gain, listed: false }, open)).toEqual(["alone-no-more"]);
    expect(verdictSteps(gain, { ...gain, listed: false })).toEqual(["said-no-more", "alone"]);
  });

  it("says a further gain of a track that had one", () => {
    expect(verdictSteps(gain, { ...gain, changes: [change, change] })).toEqual(["gain"]);
  });

  it("puts a call to look again before a new place, and both before nothing", () => {
    expect(verdictSteps(open, { ...open, watch, position: "outside" })).toEqual(["watch", "position"]);
    expect(verdictSteps({ ...open, watch }, open)).toEqual(["watch-over"]);
    expect(verdictSteps({ ...open, watch }, { ...open, watch })).toEqual([]);
  });

  it("says owning won and lost, holding won and lost, and a first film", () => {
    expect(verdictSteps(open, { ...open, ownedSince: "2026-09-01" })).toEqual(["owned"]);
    expect(verdictSteps({ ...open, ownedSince: "2026-09-01" }, open)).toEqual(["owned-lost"]);
    expect(verdictSteps(open, { ...open, verdict: "steady" })).toEqual(["steady"]);
    expect(verdictSteps({ ...open, verdict: "steady" }, open)).toEqual(["steady-no-more"]);
    expect(verdictSteps(null, open)).toEqual(["first"]);
  });
});
