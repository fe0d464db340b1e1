import { describe, expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import { chooseFirstColumns, FIRST_COLUMNS } from "@/lib/report/choose-first-columns";
import { NO_WORK_FACTS, type RankedTrack } from "@/lib/report/order-of-work";
import type { TrackSummary } from "@/lib/report/track-summary";

const named = (id: string): Fundamental => BUILT_IN.find((each) => each.id === id) as Fundamental;

function track(id: string, position: "inside" | "outside" | "edge", owned: string | null = null): RankedTrack {
  const verdict = { verdict: "open", position, ownedSince: owned, listing: "none", changes: [] };
  return {
    fundamental: named(id),
    summary: {
      fundamentalId: id,
      sessions: [],
      verdict: verdict as unknown as TrackVerdict,
    } as unknown as TrackSummary,
  };
}

describe("the fundamentals that stand first", () => {
  it("the one in hand, then owned ones, then those inside; what waits is in the rest", () => {
    const tracks = [
      track("trail-v", "inside"),
      track("foot-line", "outside"),
      track("setup-tilt", "inside", "2026-05-01"),
      track("hinge", "outside"),
      track("hip-sway", "edge"),
    ];
    expect(chooseFirstColumns(BUILT_IN, tracks)).toEqual(["foot-line", "setup-tilt", "trail-v"]);
  });

  it("where nothing is coached what is in doubt stands before what is kept; the coach's choice first", () => {
    const tracks = [track("trail-v", "inside"), track("setup-tilt", "edge"), track("hip-sway", "edge")];
    expect(chooseFirstColumns(BUILT_IN, tracks)).toEqual(["lead-v", "setup-tilt", "hip-sway", "trail-v"]);
    const chosen = { ...NO_WORK_FACTS, chosenId: "head-drift" };
    expect(chooseFirstColumns(BUILT_IN, tracks, chosen)[0]).toBe("head-drift");
  });

  it("a difference in hand brings the two stills that it is read from", () => {
    expect(chooseFirstColumns(BUILT_IN, [track("setup-tilt", "inside"), track("tilt-kept", "outside")])).toEqual([
      "top-tilt",
      "setup-tilt",
    ]);
  });

  it("where nothing was measured the order of work alone decides: six of it", () => {
    const first = chooseFirstColumns(BUILT_IN, []);
    expect(first).toEqual(BUILT_IN.slice(0, FIRST_COLUMNS).map((each) => each.id));
  });

  it("never more than six, never one twice, never one that is read from no still", () => {
    const first = chooseFirstColumns(
      BUILT_IN,
      BUILT_IN.map((each) => track(each.id, "inside")),
    );
    expect(first.length).toBe(FIRST_COLUMNS);
    expect(new Set(first).size).toBe(FIRST_COLUMNS);
    expect(first.every((id) => named(id).derivedFrom === null)).toBe(true);
  });
});
