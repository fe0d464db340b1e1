import { describe, expect, it } from "vitest";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import { buildStrip } from "@/lib/report/build-strip";
import type { TrackSummary } from "@/lib/report/track-summary";

const interval = (estimate: number, half: number) => ({
  ...{ estimate, low80: estimate - half / 2, high80: estimate + half / 2 },
  ...{ low95: estimate - half, high95: estimate + half },
});

function strip(verdict: Partial<TrackVerdict>, goal = { low: 0, high: 10 } as TrackSummary["goal"]) {
  const made = { verdict: "open", change: null, changes: [], moved: null, listed: false, unitSd: 2, ...verdict };
  const sessions = [
    { date: "2026-03-01", mean: 5, mark: "used" },
    { date: "2026-03-15", mean: 20, mark: "set-aside" },
  ];
  const summary = { goal, verdict: made, sessions } as unknown as TrackSummary;
  return buildStrip(summary, "2026-03-01", "2026-03-15", "said");
}

describe("where the level lies now", () => {
  it("a band from 0 to 10 takes the middle third: 5 ± 2 lies from 0.433 to 0.567", () => {
    const { now } = strip({ levelNow: interval(5, 2), position: "inside" });
    expect(now?.y).toBeCloseTo(1 / 2, 12);
    expect(now?.low).toBeCloseTo(1 / 3 + 0.1, 12);
    expect(now?.high).toBeCloseTo(1 / 3 + 0.7 / 3, 12);
    expect(now?.place).toBe("settled");
  });

  it("on an edge it is told apart from inside and outside, and beyond the strip it stays at its edge", () => {
    expect(strip({ levelNow: interval(9, 3), position: "edge" }).now?.place).toBe("edge");
    expect(strip({ levelNow: interval(200, 3), position: "outside" }).now).toEqual({
      ...{ low: 0.96, y: 0.96, high: 0.96, place: "settled" },
    });
  });

  it("without a level there is nothing to draw; without a goal it is drawn within its own range", () => {
    expect(strip({ levelNow: null, position: null }).now).toBeNull();
    const bare = strip({ levelNow: interval(5, 2), position: null }, { low: null, high: null });
    expect(bare.edges).toBe("none");
    expect(bare.now?.low).toBeLessThan(bare.now?.high ?? 0);
  });

  it("says nothing of whether it has changed: no line while not settled", () => {
    expect(strip({ levelNow: interval(5, 2), position: "inside" }).levels).toEqual([]);
    expect(strip({ verdict: "steady", levelNow: interval(5, 2), position: "inside" }).levels).toHaveLength(1);
  });
});
