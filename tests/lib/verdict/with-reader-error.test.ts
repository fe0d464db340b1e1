import { describe, expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import type { JudgedTrack } from "@/lib/domain/judged-track";
import type { MeasuredReaderError } from "@/lib/domain/reread";
import { startNoiseModel } from "@/lib/stats/start-noise-model";
import { judgeTrack } from "@/lib/verdict/judge-track";
import { noiseAlways } from "@/lib/verdict/noise";
import { POLICY } from "@/lib/verdict/policy";
import { trackHistories } from "@/lib/verdict/track-history";
import { withReaderError } from "@/lib/verdict/with-reader-error";
import { filmedRecord, SQUARE_FILMS } from "./filmed-record";
import { flat, madeTrack } from "./made-track";

const hinge = BUILT_IN.find((each) => each.id === "hinge");
if (!hinge) throw new Error("no hinge");
/** Twelve sessions of two readers, ten days apart. */
const made = madeTrack(17, [...flat(6, 80), ...flat(6, 84)]);
const track: JudgedTrack = {
  ...made,
  goal: { low: 82, high: 90 },
  sessions: made.sessions.map((session, i) => ({ ...session, reader: i < 6 ? "Wren" : "Lark" })),
};
const dayOf = (at: number): string => track.sessions[at]?.date ?? "";
const measured = (at: number, number = 1, more: Partial<MeasuredReaderError> = {}): MeasuredReaderError => ({
  ...{ fundamentalId: "hinge", number, fromDay: dayOf(at), readerSd: 0.6, offsetSd: 0.4 },
  ...{ pairs: 12, shared: 10, version: "v", ...more },
});
const judge = (given: JudgedTrack) => judgeTrack(given, noiseAlways(startNoiseModel("start")), POLICY, "looks").verdict;

describe("the reader's error of a track", () => {
  it("without a fit is the customary one, on the track alone", () => {
    const got = withReaderError(track, hinge, []);
    expect(got).toEqual({ ...track, readerSd: hinge.readerSd });
    expect(withReaderError(track, hinge, [measured(0, 1, { fundamentalId: "foot-line" })])).toEqual(got);
  });
  it("fitted before the first film is the track's; fitted in between, earlier sessions keep the customary one", () => {
    const whole = withReaderError(track, hinge, [measured(0)]);
    expect(whole).toEqual({ ...track, readerSd: 0.6, readerOffsetSd: 0.4 });
    const late = withReaderError(track, hinge, [measured(8)]);
    expect([late.readerSd, late.readerOffsetSd]).toEqual([0.6, 0.4]);
    expect(late.sessions.map((session) => session.readerSd)).toEqual([
      ...flat(8, hinge.readerSd),
      ...Array.from({ length: 4 }),
    ]);
    expect(late.sessions.every((session) => session.readerOffsetSd === undefined)).toBe(true);
  });
  it("a fit after the last film changes nothing at all", () => {
    const later = measured(11, 1, { fromDay: "2099-01-01" });
    expect(judge(withReaderError(track, hinge, [later]))).toEqual(judge(withReaderError(track, hinge, [])));
  });
  it("no look before its day changes, and from its day on a look is what the prefix alone would say", () => {
    const fits = [measured(8), measured(10, 2, { readerSd: 3, offsetSd: null })];
    const all = judge(withReaderError(track, hinge, fits)).looks ?? [];
    const customary = judge(withReaderError(track, hinge, [])).looks ?? [];
    expect(all.slice(0, 8)).toEqual(customary.slice(0, 8));
    expect(all.slice(8)).not.toEqual(customary.slice(8));
    for (const at of [7, 8, 9, 10, 11]) {
      const prefix = withReaderError({ ...track, sessions: track.sessions.slice(0, at + 1) }, hinge, fits);
      expect(judge(prefix).looks?.at(-1)).toEqual(all[at]);
    }
  });
  it("a smaller offset between readers makes more of a change that comes with another reader", () => {
    const evidenceWith = (offsetSd: number) =>
      judge(withReaderError(track, hinge, [measured(0, 1, { offsetSd })])).evidence.logBayesFactor;
    expect(evidenceWith(0.3)).toBeGreaterThan(evidenceWith(5) + 0.5);
  });
  it("reaches every track of a student from what is on file", () => {
    const films = SQUARE_FILMS;
    const fit = { ...measured(0), fromDay: "2026-03-15" };
    const [found] = trackHistories(filmedRecord(films, { readerErrors: [fit] }), "2026-12-31").filter(
      (history) => history.fundamental.id === "hinge",
    );
    expect(found?.judged.readerSd).toBe(0.6);
    expect(found?.judged.sessions.map((session) => session.readerSd)).toEqual([
      ...flat(2, hinge.readerSd),
      ...Array.from({ length: 4 }),
    ]);
  });
});
