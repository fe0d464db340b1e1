import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Verdict } from "@/lib/domain/track-verdict";
import { POLICY as BUILT_IN } from "@/lib/verdict/policy";
import { type ListedLook, rosterList } from "@/lib/verdict/roster-list";

/** No look asks more than the limit here. */
const POLICY = { ...BUILT_IN, limitEarlyRise: 0, limitLateRise: 0, limitRise: 0, listCaution: 1 };

const look = (day: number, logBayesFactor: number, verdict: Verdict = "open", start = 0): ListedLook => ({
  day,
  logBayesFactor,
  verdict,
  start,
  adds: true,
});
/** Two looks on one day of the same evidence: what is borne out. */
const twice = (day: number, logBayesFactor: number, verdict: Verdict): ListedLook[] => [
  look(day, logBayesFactor, verdict),
  look(day, logBayesFactor, verdict),
];
const quiet = (count: number): ListedLook[][] => Array.from({ length: count }, () => [look(1, 0), look(2, 0)]);

describe("rosterList", () => {
  it("alone, a gain that two looks bear out at 2.0 is listed: p = .1 exp(-1.6 (2 - .81)) = .0149 <= .05", () => {
    expect(rosterList([twice(1, 2, "gain")], 0.05, POLICY).latest).toEqual([true]);
  });

  it("among nine quiet tracks it is not: .0149 x 10 / 1 = .149; at 3.0 .0301 it is", () => {
    expect(rosterList([twice(1, 2, "gain"), ...quiet(9)], 0.05, POLICY).latest[0]).toBe(false);
    expect(rosterList([twice(1, 3, "gain"), ...quiet(9)], 0.05, POLICY).latest[0]).toBe(true);
  });

  it("one look alone is never listed, nor what the look before doesn't bear out: the smaller of two counts", () => {
    expect(rosterList([[look(1, 9, "gain")]], 0.05, POLICY).latest).toEqual([false]);
    expect(rosterList([[look(1, 0.5, "open"), look(2, 9, "gain")]], 0.05, POLICY).latest).toEqual([false]);
    expect(rosterList([[look(1, 2, "open"), look(2, 9, "gain")]], 0.05, POLICY).latest).toEqual([true]);
  });

  it("a session set aside repeats a look and bears nothing out", () => {
    const again = { ...look(2, 9, "gain"), adds: false };
    expect(rosterList([[look(1, 9, "gain"), again]], 0.05, POLICY).latest).toEqual([false]);
    expect(rosterList([[look(1, 9, "gain"), again, look(3, 2, "gain")]], 0.05, POLICY).latest).toEqual([true]);
  });

  it("counts evidence less what its look asks beyond the limit: 6.0 at the first two looks, where 4.0 is asked, is 2.0", () => {
    const free = { ...POLICY, limitEarlyRise: BUILT_IN.limitEarlyRise };
    expect(rosterList([twice(1, 4.5, "gain")], 0.05, free).latest).toEqual([false]);
    expect(rosterList([twice(1, 6, "gain")], 0.05, free).latest).toEqual([true]);
  });

  it("evidence without a word is not listed, however large", () => {
    expect(rosterList([twice(1, 20, "open"), twice(1, 20, "steady")], 0.05, POLICY).latest).toEqual([false, false]);
  });

  it("the largest evidence so far counts, and a listed track stays though others crowd in", () => {
    const gain = [...twice(1, 4, "gain"), look(2, 1.5, "gain")];
    const late = Array.from({ length: 40 }, () => [look(2, 0)]);
    const { looks, latest } = rosterList([gain, ...late], 0.5, POLICY);
    expect(looks[0]).toEqual([true, true, true]);
    expect(latest[0]).toBe(true);
  });

  it("leaves the list when its own verdict is withdrawn, and a slip after a gain has to earn its place", () => {
    const tracks = [[...twice(1, 6, "gain"), look(2, 0.5, "open")], ...quiet(9)];
    expect(rosterList(tracks, 0.05, POLICY).looks[0]).toEqual([true, true, false]);
    const turned = [[...twice(1, 6, "gain"), look(2, 3, "slip", 7)], ...quiet(9)];
    expect(rosterList(turned, 0.05, POLICY).looks[0]).toEqual([true, true, false]);
  });

  it("two looks on one day are one date: the later one speaks for both", () => {
    expect(rosterList([[look(1, 4, "open"), look(1, 5, "gain")]], 0.05, POLICY).looks[0]).toEqual([true, true]);
  });

  it("nothing to list: no tracks, tracks without looks", () => {
    expect(rosterList([], 0.05, POLICY)).toEqual({ looks: [], latest: [] });
    expect(rosterList([[], []], 0.05, POLICY)).toEqual({ looks: [[], []], latest: [false, false] });
  });

  const anyTrack = fc
    .array(fc.tuple(fc.integer({ min: 1, max: 6 }), fc.double({ min: -1, max: 8, noNaN: true })), { maxLength: 6 })
    .map((looks) =>
      looks.sort(([a], [b]) => a - b).map(([day, e]) => look(day, e, e >= 3 ? "gain" : e >= 2 ? "slip" : "open")),
    );

  it("a date says the same whatever comes after it, with as many tracks in all", () => {
    fc.assert(
      fc.property(fc.array(anyTrack, { maxLength: 8 }), fc.integer({ min: 1, max: 6 }), (tracks, until) => {
        const whole = rosterList(tracks, 0.1, POLICY).looks;
        const before = tracks.map((looks) => looks.filter((each) => each.day <= until));
        const part = rosterList(before, 0.1, POLICY).looks;
        expect(part).toEqual(whole.map((looks, t) => looks.slice(0, (before[t] as ListedLook[]).length)));
      }),
    );
  });

  it("while the word stays, a listed track stays; every listed look has a word", () => {
    fc.assert(
      fc.property(fc.array(anyTrack, { maxLength: 8 }), (tracks) => {
        rosterList(tracks, 0.1, POLICY).looks.forEach((listed, t) => {
          const looks = tracks[t] as ListedLook[];
          listed.forEach((on, at) => {
            const lastOfDay = looks.filter((each) => each.day === looks[at]?.day).at(-1);
            if (on) expect(["gain", "slip"]).toContain(lastOfDay?.verdict);
            const before = looks[at - 1];
            const steadyWord = looks.slice(at).every((each) => each.verdict === before?.verdict);
            if (at > 0 && listed[at - 1] && steadyWord) expect(on).toBe(true);
          });
        });
      }),
    );
  });
});
