import { describe, expect, it } from "vitest";
import type { JudgedTrack } from "@/lib/domain/judged-track";
import { startNoiseModel } from "@/lib/stats/start-noise-model";
import { judgeTrack, noChangeProbability } from "@/lib/verdict/judge-track";
import { noiseAlways, noiseByName, START_NOISE } from "@/lib/verdict/noise";
import { POLICY } from "@/lib/verdict/policy";
import { flat, madeTrack } from "./made-track";

const noise = noiseAlways(startNoiseModel(START_NOISE));
const judge = (track: JudgedTrack) => judgeTrack(track, noise, POLICY, "looks").verdict;
const step = [...flat(8, 0), ...flat(10, 12)];

describe("judgeTrack: too little", () => {
  it("no session: open, no evidence, nothing can be said, four sessions to the first look", () => {
    expect(judge(madeTrack(1, [], { goal: { low: 0, high: 5 } }))).toMatchObject({
      sessions: 0,
      swings: 0,
      verdict: "open",
      evidence: { logBayesFactor: 0, directionUp: 0.5, limit: 5.85, noChange: 0.8, priorChange: 0.2 },
      change: null,
      changes: [],
      levelNow: null,
      bandShare: null,
      trend: null,
      unitSd: null,
      position: null,
      ownedSince: null,
      settle: { none: "first-look", sessionsToFirstLook: 4 },
      looks: [],
    });
  });

  it("one session: open, but level, place and share are said, all errors counted", () => {
    const verdict = judge(madeTrack(2, [30], { goal: { low: 0, high: 5 } }));
    expect(verdict).toMatchObject({ verdict: "open", position: "outside", sessions: 1, swings: 5 });
    // Without learned noise and under 4 df of swings to pool, 1.96 x hypot(day .5 s, camera 1, s / sqrt 5) of s = its own sd.
    expect(verdict.levelNow).not.toBeNull();
    const s = verdict.errorBudget as { day: number };
    const swing = s.day / POLICY.dayFromSwing;
    const sd = Math.sqrt(s.day ** 2 + 1 + swing ** 2 / 5);
    expect(((verdict.levelNow?.high95 ?? 0) - (verdict.levelNow?.low95 ?? 0)) / 2).toBeCloseTo(1.959964 * sd, 4);
    expect(verdict.unitSd).toBeCloseTo(sd, 10);
    expect(verdict.bandShare?.estimate).toBeLessThan(0.01);
  });

  it("three sessions of one placement know the level no better than its camera", () => {
    const apart = madeTrack(3, [1, 1, 1]);
    const shared = { ...apart, sessions: apart.sessions.map((session) => ({ ...session, captureSetup: "a" })) };
    const width = (track: JudgedTrack) => {
      const level = judge(track).levelNow;
      return (level?.high95 ?? 0) - (level?.low95 ?? 0);
    };
    const variance = (wide: number) => (wide / 2 / 1.959964) ** 2;
    // Camera variance 1: shared it stays 1, apart it is 1/3.
    expect(variance(width(shared)) - variance(width(apart))).toBeCloseTo(2 / 3, 4);
  });

  it("unused sessions keep their index and are not seen", () => {
    const track = madeTrack(4, [0, 1, 2, 3]);
    const aside = {
      ...track,
      sessions: track.sessions.map((session, i) => (i === 2 ? { ...session, use: false } : session)),
    };
    const verdict = judge(aside);
    expect(verdict).toMatchObject({ sessions: 4, evidence: { logBayesFactor: 0 }, settle: { sessionsToFirstLook: 1 } });
  });
});

describe("judgeTrack: a change", () => {
  it("a step of 12 before session 8 is a gain, within its set, between its dates", () => {
    const verdict = judge(madeTrack(5, step));
    expect(verdict.verdict).toBe("gain");
    expect(verdict.settle).toBeNull();
    expect(verdict.change?.shape).toBe("step");
    expect(verdict.change?.set95).toContain(8);
    expect(verdict.change?.set80?.every((index) => verdict.change?.set95?.includes(index))).toBe(true);
    const first = Math.min(...(verdict.change?.set95 ?? []));
    const track = madeTrack(5, step);
    expect(verdict.change?.from).toBe(track.sessions[first - 1]?.date);
    expect(verdict.evidence.noChange).toBeLessThan(0.05);
  });

  it("is as large as it is: of 20 steps of 12 at least 17 have it in their 95 of 100", () => {
    const inside = Array.from({ length: 20 }, (_, seed) => judge(madeTrack(200 + seed, step)).change).filter(
      (change) => change !== null && change.size.low95 < 12 && change.size.high95 > 12,
    );
    expect(inside.length).toBeGreaterThanOrEqual(17);
  });

  it("the printed size is the difference of the printed levels", () => {
    const change = judge(madeTrack(6, step)).change;
    expect((change?.after.estimate ?? 0) - (change?.before.estimate ?? 0)).toBeCloseTo(change?.size.estimate ?? 0, 10);
  });

  it("better down turns it into a slip; neither better nor goal takes up for better and says so", () => {
    expect(judge(madeTrack(5, step, { better: "down" }))).toMatchObject({ verdict: "slip", assumed: null });
    expect(judge(madeTrack(5, step, { better: undefined }))).toMatchObject({ verdict: "gain", assumed: "up" });
  });

  it("by the goal band: toward it a gain, away from it a slip, within it or through it neither", () => {
    const toward = { better: undefined, goal: { low: 10, high: 15 } };
    expect(judge(madeTrack(5, step, toward))).toMatchObject({ verdict: "gain", moved: null, assumed: null });
    const away = { better: undefined, goal: { low: -3, high: 3 } };
    expect(judge(madeTrack(5, step, away))).toMatchObject({ verdict: "slip", moved: null, position: "outside" });
    const within = judge(madeTrack(5, step, { better: undefined, goal: { low: -60, high: 72 } }));
    expect(within).toMatchObject({ verdict: "steady", moved: "within", position: "inside" });
    expect(within.change).not.toBeNull();
    expect(judge(madeTrack(5, step, { better: undefined, goal: { low: 4, high: 8 } })).moved).toBe("through");
  });

  it("gain then loss: both changes are kept, the latest gives the word and the level", () => {
    const track = madeTrack(7, [...flat(8, 0), ...flat(12, 12), ...flat(10, 0)]);
    const verdict = judge(track);
    expect(verdict.changes.map((change) => change.verdict)).toEqual(["gain", "slip"]);
    expect(verdict.verdict).toBe("slip");
    expect(verdict.change).toEqual(verdict.changes[1]);
    expect(verdict.changes[0]?.set95).toContain(8);
    expect(verdict.changes[1]?.set95).toContain(20);
    expect(Math.abs(verdict.levelNow?.estimate ?? 99)).toBeLessThan(3);
    expect(verdict.looks?.[19]?.verdict).toBe("gain");
  });

  it("steady is earned: never in the first sessions, at last by a long flat season, and only without a change", () => {
    const verdict = judge(madeTrack(8, flat(40, 5)));
    expect(verdict).toMatchObject({ verdict: "steady", change: null, settle: null });
    expect(verdict.looks?.slice(0, 5).every((look) => look.verdict === "open")).toBe(true);
  });

  it("a reading far from its session's median is named, never dropped silently", () => {
    const track = madeTrack(9, flat(8, 5));
    const swings = [...(track.sessions[3]?.swings ?? [])];
    swings[2] = 90;
    const misread = { ...track, sessions: track.sessions.map((one, i) => (i === 3 ? { ...one, swings } : one)) };
    expect(judge(misread).setAside).toEqual([{ session: 3, swing: 2, why: "misreading" }]);
    expect(judge(misread).swings).toBe(40);
  });
});

describe("judgeTrack: what a look depends on", () => {
  it("a prefix of the track says the same at each of its looks, through a change and its loss", () => {
    const track = madeTrack(7, [...flat(8, 0), ...flat(12, 12), ...flat(6, 0)]);
    const whole = judge(track).looks ?? [];
    for (const count of [4, 9, 12, 20, 24]) {
      const part = judge({ ...track, sessions: track.sessions.slice(0, count) });
      expect(part.looks).toEqual(whole.slice(0, count));
      expect(part.verdict).toBe(whole[count - 1]?.verdict);
    }
  });

  it("latest says what the last of all looks says", () => {
    const track = madeTrack(5, step, { goal: { low: 10, high: 15 } });
    const { looks: _, ...withLooks } = judge(track);
    expect(judgeTrack(track, noise, POLICY, "latest").verdict).toEqual(withLooks);
  });

  it("sessions in any order are the same track", () => {
    const track = madeTrack(5, step, { goal: { low: 10, high: 15 } });
    const turned = { ...track, sessions: [...track.sessions.slice(9).reverse(), ...track.sessions.slice(0, 9)] };
    expect(judge(turned)).toEqual(judge(track));
  });

  it("multiplying every value and sd by 8 changes no word and no evidence", () => {
    const track = madeTrack(5, step);
    const times = (x: number) => 8 * x;
    const scaled: JudgedTrack = {
      ...track,
      readerSd: 8,
      sessions: track.sessions.map((one) => ({ ...one, captureSd: 8 * one.captureSd, swings: one.swings.map(times) })),
    };
    const [a, b] = [judge(track), judge(scaled)];
    expect(b.verdict).toBe(a.verdict);
    expect(b.evidence.logBayesFactor).toBeCloseTo(a.evidence.logBayesFactor, 8);
    expect(b.change?.size.estimate).toBeCloseTo(8 * (a.change?.size.estimate ?? 0), 6);
  });

  it("the look after a session is said with the noise model that the session names", () => {
    const other = { ...startNoiseModel("other"), priorChange: 0.4 };
    const byName = noiseByName([other, startNoiseModel("newest")]);
    const track = madeTrack(5, flat(6, 0));
    const named = {
      ...track,
      sessions: track.sessions.map((one, i) => (i === 5 ? { ...one, noiseModel: "other" } : one)),
    };
    expect(judgeTrack(named, byName, POLICY, "latest").verdict).toMatchObject({
      noiseModel: "other",
      evidence: { priorChange: 0.4 },
    });
    expect(judgeTrack(track, byName, POLICY, "latest").verdict.noiseModel).toBe("newest");
    expect(() => byName("nobody's")).toThrow(/nobody's/);
  });
});

describe("judgeTrack: owned", () => {
  const inside = madeTrack(10, flat(14, 50), { goal: { low: 30, high: 70 } });
  const rested = (days: number | undefined) => ({
    ...inside,
    sessions: inside.sessions.map((one, i) =>
      i === 9 && days !== undefined ? { ...one, daysSincePractice: days } : one,
    ),
  });

  it("since the first look that rests on three sessions inside over 21 days, the last 7 days after practice", () => {
    const track = rested(7);
    // Ten days apart: sessions 7, 8, 9 span 20 days, one short; sessions 20 days apart span enough.
    expect(judge(track).ownedSince).toBeNull();
    const stretched = { ...track, sessions: track.sessions.filter((_, i) => i !== 8) };
    expect(judge(stretched).ownedSince).toBe(inside.sessions[9]?.date);
  });

  it("not known when last practised, or too lately: not owned", () => {
    const without = (track: JudgedTrack) => ({ ...track, sessions: track.sessions.filter((_, i) => i !== 8) });
    expect(judge(without(rested(undefined))).ownedSince).toBeNull();
    expect(judge(without(rested(6))).ownedSince).toBeNull();
  });
});

describe("noChangeProbability", () => {
  it("ln 20 at a share of .2: odds .25 x 20 = 5 to 1 for a change, 1 / 6 for none", () => {
    expect(noChangeProbability(Math.log(20), 0.2)).toBeCloseTo(1 / 6, 12);
    expect(noChangeProbability(0, 0.2)).toBeCloseTo(0.8, 12);
    expect(noChangeProbability(5000, 0.2)).toBe(0);
  });
});
