import { describe, expect, it } from "vitest";
import { startNoiseModel } from "@/lib/stats/start-noise-model";
import { judgeTrack } from "@/lib/verdict/judge-track";
import { noiseAlways } from "@/lib/verdict/noise";
import { POLICY } from "@/lib/verdict/policy";
import { smallestProvable } from "@/lib/verdict/smallest-provable";
import { flat, madeTrack } from "./made-track";

const noise = startNoiseModel("start");
const at = (films: number, before: number, levels: readonly number[], seed = 3) =>
  smallestProvable(madeTrack(seed, levels), noise, POLICY, { films, before });

describe("the smallest change that further films would prove", () => {
  it("is smaller where a second film comes before the change: straight after a single one none is proved in eight more", () => {
    const [straight, second] = [at(8, 0, [10]), at(8, 1, [10])];
    expect(straight?.size).toBeNull();
    expect(second?.size).toBeGreaterThan(0);
  });

  it("is smaller with more films before and after it", () => {
    const sizes = [at(8, 0, [10, 10])?.size, at(8, 0, [10, 10, 10])?.size];
    expect(sizes[0]).toBeGreaterThan(sizes[1] ?? Number.POSITIVE_INFINITY);
    expect(at(4, 0, [10, 10])?.size ?? Number.POSITIVE_INFINITY).toBeGreaterThan(sizes[0] ?? 0);
  });

  it("doesn't hang on where the level is, and grows with the unit: ten times the numbers, ten times the size", () => {
    const track = madeTrack(5, [10, 10]);
    const times = (factor: number, shift: number) =>
      smallestProvable(
        {
          ...track,
          readerSd: factor,
          sessions: track.sessions.map((session) => ({
            ...session,
            captureSd: session.captureSd * factor,
            swings: session.swings.map((value) => value * factor + shift),
          })),
        },
        noise,
        POLICY,
        { films: 8, before: 0 },
      )?.size ?? 0;
    expect(times(1, 40)).toBeCloseTo(times(1, 0), 6);
    expect(times(10, 0)).toBeCloseTo(10 * times(1, 0), 6);
  });

  it("goes by the student's rhythm, a week where there is one film; with as many swings as are usual", () => {
    expect(at(8, 1, [10])).toMatchObject({ days: 56, swingsEach: 5 });
    expect(at(8, 0, [10, 10])).toMatchObject({ days: 80 });
  });

  it("is nothing without a used film", () => {
    expect(at(8, 0, [])).toBeNull();
    const unused = madeTrack(3, [10]);
    const aside = { ...unused, sessions: unused.sessions.map((session) => ({ ...session, use: false })) };
    expect(smallestProvable(aside, noise, POLICY, { films: 8, before: 0 })).toBeNull();
  });

  it("is kept: of 60 true steps of that size after two films, at least .65 are proved by the eighth film after it (4 in 5 promised, 2.9 sd of 60)", () => {
    const size = at(8, 0, [0, 0])?.size ?? 0;
    let proved = 0;
    for (let seed = 1; seed <= 60; seed++) {
      const track = madeTrack(900 + seed, [...flat(2, 0), ...flat(8, size)]);
      if (judgeTrack(track, noiseAlways(noise), POLICY, "latest").verdict.change !== null) proved++;
    }
    expect(proved / 60).toBeGreaterThanOrEqual(0.65);
  });
});
