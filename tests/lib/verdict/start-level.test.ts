import { describe, expect, it } from "vitest";
import { dayFromNumber } from "@/lib/domain/calendar-day";
import type { JudgedTrack } from "@/lib/domain/judged-track";
import { startNoiseModel } from "@/lib/stats/start-noise-model";
import { judgeTrack } from "@/lib/verdict/judge-track";
import { POLICY } from "@/lib/verdict/policy";
import { AWAY_DOUBT_DAYS, startLevel } from "@/lib/verdict/start-level";

const track = (levels: readonly number[], first: number): JudgedTrack => ({
  id: "t",
  sessions: levels.map((level, at) => ({
    date: dayFromNumber(first + 7 * at),
    captureSd: 0.5,
    swings: [level - 1, level, level + 1],
  })),
});
const judge = (given: JudgedTrack) => judgeTrack(given, () => startNoiseModel("start"), POLICY, "latest").verdict;
const old = judge(track([10, 11, 9, 10, 11, 10], 20_000));
const away = (days: number) => startLevel(old, dayFromNumber(20_035), dayFromNumber(20_035 + days));

describe("the level that an earlier season left", () => {
  it("is the old level; its doubt grows by one squared sd of a session mean in six weeks away", () => {
    const now = away(0);
    const later = away(AWAY_DOUBT_DAYS);
    expect(now?.mean).toBe(old.levelNow?.estimate);
    expect((later?.sd ?? 0) ** 2 - (now?.sd ?? 0) ** 2).toBeCloseTo((old.unitSd ?? 0) ** 2, 10);
    expect((away(2 * AWAY_DOUBT_DAYS)?.sd ?? 0) ** 2 - (now?.sd ?? 0) ** 2).toBeCloseTo(2 * (old.unitSd ?? 0) ** 2, 10);
  });

  it("is unknown where nothing was measured", () =>
    expect(startLevel(judge({ id: "t", sessions: [] }), "2026-01-01", "2026-02-01")).toBeUndefined());

  it("helps a new season: five sessions far from it prove what five alone can't", () => {
    const levels = [20, 21, 19, 20, 20];
    const alone = judge(track(levels, 20_100));
    const believed = judge({ ...track(levels, 20_100), startLevel: away(65) as { mean: number; sd: number } });
    expect(believed.evidence.logBayesFactor).toBeGreaterThan(alone.evidence.logBayesFactor);
    expect(alone.verdict).toBe("open");
  });

  it("and one film after a break raises no alarm", () =>
    expect(judge({ ...track([20], 20_100), startLevel: away(65) as { mean: number; sd: number } }).verdict).toBe(
      "open",
    ));
});
