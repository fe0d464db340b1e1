import { describe, expect, it } from "vitest";
import type { JudgedTrack } from "@/lib/domain/judged-track";
import { startNoiseModel } from "@/lib/stats/start-noise-model";
import { judgedSeries } from "@/lib/verdict/judged-series";
import { POLICY } from "@/lib/verdict/policy";
import { changeBelow, steadyAt } from "@/lib/verdict/quick-look";
import { flat, madeTrack } from "./made-track";

const noise = startNoiseModel("start");
const seriesOf = (track: JudgedTrack) => judgedSeries(track, POLICY).series;

describe("the limit below which any change lies", () => {
  it("is where holding begins: a smallest worthwhile change just above it holds, just below it does not", () => {
    for (const [seed, levels] of [
      [1, flat(6, 0)],
      [2, flat(14, 0)],
      [3, [...flat(6, 0), ...flat(6, 2)]],
    ] as const) {
      const series = seriesOf(madeTrack(seed, levels));
      const limit = changeBelow(series, noise, POLICY) ?? 0;
      expect(limit).toBeGreaterThan(0);
      expect(steadyAt(series, noise, () => limit * 1.0001, POLICY)).toBe(true);
      expect(steadyAt(series, noise, () => limit * 0.9999, POLICY)).toBe(false);
    }
  });
  it("fewer than four sessions bound nothing", () =>
    expect(changeBelow(seriesOf(madeTrack(1, flat(3, 0))), noise, POLICY)).toBeNull());
  it("scales with the unit: readings times 10, limit times 10", () => {
    const track = madeTrack(4, flat(10, 0), { readerSd: 1 });
    const tenfold: JudgedTrack = {
      ...track,
      readerSd: 10,
      sessions: track.sessions.map((session) => ({
        ...session,
        captureSd: session.captureSd * 10,
        swings: session.swings.map((value) => value * 10),
      })),
    };
    const [one, ten] = [track, tenfold].map((each) => changeBelow(seriesOf(each), noise, POLICY) ?? 0) as [
      number,
      number,
    ];
    expect(ten / one).toBeCloseTo(10, 4);
  });
  it("shrinks as sessions come: over 60 unchanged tracks the median after 20 is under that after 6", () => {
    const median = (count: number): number =>
      Array.from(
        { length: 60 },
        (_, seed) => changeBelow(seriesOf(madeTrack(seed + 10, flat(count, 0))), noise, POLICY) ?? 0,
      ).sort((a, b) => a - b)[30] as number;
    expect(median(20)).toBeLessThan(median(6));
  });
  it("calibration: of 200 tracks that stepped by 3 at session 8, seen up to session 9, at most 10 % have a limit under 3", () => {
    const tracks = 200;
    let missed = 0;
    for (let seed = 1; seed <= tracks; seed++) {
      const series = seriesOf(madeTrack(1000 + seed, [...flat(7, 0), ...flat(2, 3)]));
      if ((changeBelow(series, noise, POLICY) ?? 0) < 3) missed++;
    }
    // 95 of 100 over the prior; 10 % is that and two Monte-Carlo sds of .016 more, for a size that the prior holds rare.
    expect(missed / tracks).toBeLessThanOrEqual(0.1);
  });
});
