import { describe, expect, it } from "vitest";
import { dayFromNumber } from "@/lib/domain/calendar-day";
import type { Edges } from "@/lib/domain/fundamental";
import type { JudgedTrack } from "@/lib/domain/judged-track";
import type { DatedOwningRule } from "@/lib/domain/owning-rule";
import type { Interval, Verdict } from "@/lib/domain/track-verdict";
import { judgedSeries } from "@/lib/verdict/judged-series";
import { type OwnedLook, ownedSince } from "@/lib/verdict/owned-since";
import { POLICY } from "@/lib/verdict/policy";
import { seeded } from "./made-track";

/** One made look: the level’s 95 of 100 interval, the share inside any goal, the word and when it was proved. */
interface Made {
  readonly level: readonly [number, number];
  readonly share?: readonly [estimate: number, low80: number];
  readonly verdict?: Verdict;
  readonly provedOn?: string;
  readonly rest?: number;
  readonly use?: boolean;
}

const DAY = 20_500; // 2026-02-16
const day = (at: number): string => dayFromNumber(DAY + 8 * at);
const good: Made = { level: [86, 94] };
const interval = (low: number, high: number, estimate = (low + high) / 2): Interval => ({
  ...{ estimate, low80: low, high80: high, low95: low, high95: high },
});

function given(made: readonly Made[], over: Partial<JudgedTrack> = {}) {
  const track: JudgedTrack = {
    id: "t",
    goal: { low: 85, high: 95 },
    ...over,
    sessions: made.map(({ rest = 9, use = true }, at) => ({
      ...{ date: day(at), captureSd: 1, swings: [90], daysSincePractice: rest, use },
    })),
  };
  const looks = made.map(
    ({ level, share = [0.9, 0.8], verdict = "open", provedOn = null }): OwnedLook => ({
      level: () => interval(...level),
      share: (_: Edges) => interval(share[1], 1, share[0]),
      verdict: () => verdict,
      provedOn: () => provedOn,
    }),
  );
  return { track, looks };
}

function owned(made: readonly Made[], over: Partial<JudgedTrack> = {}) {
  const { track, looks } = given(made, over);
  return ownedSince(track, judgedSeries(track, POLICY), looks, POLICY);
}

const rule = (over: Partial<DatedOwningRule>): DatedOwningRule => ({
  ...{ from: "2026-01-01", sessions: 3, spanDays: 21, restDays: 7, share: 0.7, shareLow: 0.55 },
  ...over,
});
const four = [good, good, good, good];

describe("the built-in owning rule, as TRADE.md §3 has it in numbers", () => {
  it("three films in a row over 21 days: eight days apart three never span more than 16", () =>
    expect(owned(four).looks).toEqual([null, null, null, null]));
  it("of films eleven days apart the third owns: 22 days", () => {
    const { track, looks } = given([good, good, good]);
    const wide = { ...track, sessions: track.sessions.map((s, at) => ({ ...s, date: dayFromNumber(DAY + 11 * at) })) };
    expect(ownedSince(wide, judgedSeries(wide, POLICY), looks, POLICY).looks).toEqual([
      null,
      null,
      dayFromNumber(DAY + 22),
    ]);
  });
});

describe("a rule of the academy’s", () => {
  const loose = rule({ spanDays: 16 });
  it("with 16 days of span the third film owns", () =>
    expect(owned(four, { owning: [loose] }).looks).toEqual([null, null, day(2), day(2)]));

  it.each([
    ["one film more", rule({ spanDays: 16, sessions: 4 }), [null, null, null, day(3)]],
    ["a longer rest than anybody took", rule({ spanDays: 16, restDays: 10 }), [null, null, null, null]],
    ["a larger share than is inside", rule({ spanDays: 16, share: 0.91 }), [null, null, null, null]],
    ["a larger lower end than is known", rule({ spanDays: 16, shareLow: 0.81 }), [null, null, null, null]],
    ["nothing but one film inside", rule({ sessions: 1, spanDays: 0 }), [day(0), day(0), day(0), day(0)]],
  ] as const)("asks for %s", (_name, owning, looks) => expect(owned(four, { owning: [owning] }).looks).toEqual(looks));

  it("decides looks of its day and later: loosened on the fourth film’s day it owns from then, not from the third", () =>
    expect(owned(four, { owning: [rule({ from: day(3), spanDays: 16 })] }).looks).toEqual([null, null, null, day(3)]));

  it("tightened later it takes nothing away: what was owned stays so until a slip is proved", () => {
    const rules = [loose, rule({ from: day(3), spanDays: 300 })];
    expect(owned([...four, good], { owning: rules }).looks).toEqual([null, null, day(2), day(2), day(2)]);
    const slipped = [...four, { ...good, verdict: "slip" as const, provedOn: day(4) }, good, good, good];
    expect(owned(slipped, { owning: rules }).looks.slice(3)).toEqual([day(2), null, null, null, null]);
    expect(owned(slipped, { owning: [loose] }).looks.slice(3)).toEqual([day(2), null, day(5), day(5), day(5)]);
  });
});

describe("a new goal asks anew", () => {
  const owning = [rule({ spanDays: 16 })];
  const goals = (low: number, high: number, from: string) => ({
    goal: { low, high },
    goals: [
      { from: "0001-01-01", low: 85, high: 95 },
      { from, low, high },
    ],
  });

  it("wider: owned from the new goal’s day, by the films up to then", () =>
    expect(owned(four, { owning, ...goals(80, 99, dayFromNumber(DAY + 20)) }).looks).toEqual([
      null,
      null,
      day(2),
      dayFromNumber(DAY + 20),
    ]));
  it("narrower than the level is known: not owned any more, and what was said before stays", () =>
    expect(owned(four, { owning, ...goals(88, 92, day(3)) }).looks).toEqual([null, null, day(2), null]));
  it("after the last film: the looks keep theirs, now is another question", () => {
    const late = dayFromNumber(DAY + 100);
    const { looks, now } = owned(four, { owning, ...goals(88, 92, late) });
    expect([looks.at(-1), now]).toEqual([day(2), null]);
    expect(owned(four, { owning, ...goals(80, 99, late) }).now).toBe(late);
  });
  it("a slip that was proved under the goal before keeps its word and takes nothing from the new question", () => {
    const made = [
      good,
      good,
      ...Array.from({ length: 4 }, () => ({ ...good, verdict: "slip" as const, provedOn: day(1) })),
    ];
    expect(owned(made, { owning }).looks).toEqual([null, null, null, null, null, null]);
    expect(owned(made, { owning, ...goals(84, 96, day(3)) }).looks).toEqual([null, null, null, day(3), day(3), day(3)]);
  });
});

describe("invariance", () => {
  it("a shorter track says the same, whatever rules and goals begin on the way (400 made tracks, seed 7)", () => {
    const rng = seeded(7);
    const pick = <T>(from: readonly T[]): T => from[Math.floor(rng() * from.length)] as T;
    let ownedLooks = 0;
    for (let nth = 0; nth < 400; nth++) {
      const made = Array.from({ length: 9 }, (): Made => {
        const verdict = pick(["open", "open", "open", "gain", "slip"] as const);
        return {
          level: pick([
            [86, 94],
            [86, 94],
            [84, 94],
          ] as const),
          rest: pick([9, 9, 3]),
          use: rng() > 0.1,
          verdict,
          ...(verdict === "slip" ? { provedOn: day(Math.floor(rng() * 9)) } : {}),
        };
      });
      const from = day(Math.floor(rng() * 9));
      const over: Partial<JudgedTrack> = {
        goal: { low: 83, high: 96 },
        goals: [
          { from: "0001-01-01", low: 85, high: 95 },
          { from, low: 83, high: 96 },
        ],
        owning: [
          rule({ spanDays: 8, sessions: 2 }),
          rule({ from: day(Math.floor(rng() * 9)), sessions: 3, spanDays: 16 }),
        ],
      };
      const whole = owned(made, over).looks;
      ownedLooks += whole.filter((since) => since !== null).length;
      for (const cut of [1, 4, 7]) expect(owned(made.slice(0, cut), over).looks).toEqual(whole.slice(0, cut));
      // Owned since a day that has come, and the day on which it began or a goal did.
      whole.forEach((since, at) => {
        if (since !== null) expect(since <= day(at)).toBe(true);
      });
    }
    expect(ownedLooks).toBeGreaterThan(300);
  });
});
