import { expect, test } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import type { Fundamental } from "@/lib/domain/fundamental";
import { definitionDays, fundamentalOn, isRead } from "@/lib/domain/fundamental-on";
import { SINCE_EVER } from "@/lib/domain/goal-band";
import { readerErrorInForce } from "@/lib/verdict/reader-error-in-force";
import { type StudentRecord, trackHistories } from "@/lib/verdict/track-history";

const HINGE = BUILT_IN.find(({ id }) => id === "hinge") as Fundamental;
const { id: _id, derivedFrom: _derived, ...DEFINED } = { ...HINGE, ownName: "Flow" };
const CHANGED = "2031-03-01";
const ERRORS = { readerSd: 2, cameraSdUnknown: 1, sensitivity: { yaw: 0, roll: 0, offset: 0 } };

/** Until 1 March errors of 2 and 1 and nothing said of the worth; from then on 4, 3, and 6 degrees. */
const OWN: Fundamental = {
  ...{ ...HINGE, id: "own-flow", ownName: "Flow", readerSd: 4, cameraSdUnknown: 3, worthwhile: 6 },
  earlier: [{ ...DEFINED, ...ERRORS, until: CHANGED, who: "Wren", why: "wrong", changedAt: `${CHANGED}T09:00:00Z` }],
};
const { earlier: _earlier, ...UNCHANGED } = { ...OWN, ...ERRORS, worthwhile: undefined };

function recordOf(own: Fundamental, days: readonly string[]): StudentRecord {
  const sessions = days.map((day, at) => ({
    ...({ id: `f${at}`, studentId: "s", day, sequence: 1, clubGroup: "iron", club: null, reader: "Wren" } as const),
    ...({ circumstance: "unaided", aid: null, stanceWidthCm: null, daysSincePractice: null, marks: [] } as const),
    ...{ note: null, solid: null, balls: null, setAsideReason: null, groupId: null },
  }));
  return {
    student: { id: "s", alias: "Ari", birthYear: 2014, hand: "right", zone: "UTC", clubs: "" },
    ...{ sessions, captures: [], statedCaptureSds: [], events: [], bands: [], lookNoise: [], fundamentals: [own] },
    readings: sessions.flatMap(({ id }) =>
      [80, 82, 81].map((value, at) => ({
        ...({ sessionId: id, swing: at + 1, fundamentalId: "own-flow", value, typed: String(value) } as const),
        signRule: "neutral" as const,
      })),
    ),
    seasonStart: "0001-01-01",
  };
}
const trackOf = (own: Fundamental, days: readonly string[]) => {
  const [track] = trackHistories(recordOf(own, days), "2031-12-31");
  if (track === undefined) throw new Error("no track");
  return track;
};

test("a film is measured by the definition of its day, and what was judged before a change stays as it was", () => {
  const before = ["2031-02-01", "2031-02-15"];
  const now = trackOf(OWN, [...before, CHANGED, "2031-04-01"]);
  expect(now.sessions.map(({ captureSd }) => captureSd)).toEqual([1, 1, 3, 3]);
  // The error of a look's reader is that of its own day; the last one's stands at the track.
  expect(now.judged.sessions.map(({ readerSd }) => readerSd ?? now.judged.readerSd)).toEqual([2, 2, 4, 4]);
  const then = trackOf(UNCHANGED, before);
  expect(now.sessions.slice(0, 2).map(({ swings, captureSd }) => [swings, captureSd])).toEqual(
    then.sessions.map(({ swings, captureSd }) => [swings, captureSd]),
  );
});

test("what a change is worth is asked anew from its day on, and not before", () => {
  const { judged } = trackOf(OWN, ["2031-02-01", "2031-04-01"]);
  const { low, high } = HINGE.goals.iron;
  // A third of the band's half, common practice without a source, until somebody says otherwise.
  const third = ((high ?? 0) - (low ?? 0)) / 2 / 3;
  expect(judged.goals).toEqual([
    { from: SINCE_EVER, low, high, worthwhileAtLeast: third },
    { from: CHANGED, low, high, worthwhileAtLeast: 6 },
  ]);
  expect(judged.worthwhileAtLeast).toBe(6);
});

test("a change that touches neither errors nor worth asks nothing anew", () => {
  const named = { ...UNCHANGED, ownName: "The flow", earlier: OWN.earlier };
  const days = ["2031-02-01", "2031-04-01"];
  expect(trackOf(named, days).judged).toEqual(trackOf(UNCHANGED, days).judged);
});

test("the customary error is that of the day; one that was measured goes before it", () => {
  const on = (day: string) => readerErrorInForce([], OWN, day).readerSd;
  expect([on("2031-02-28"), on(CHANGED)]).toEqual([2, 4]);
  const fit = { fundamentalId: "own-flow", number: 1, fromDay: "2031-02-10", readerSd: 1.5, offsetSd: null };
  expect(readerErrorInForce([fit as never], OWN, "2031-02-28").readerSd).toBe(1.5);
});

test("before anything was read a change holds for no film, and a stretch names the days within it", () => {
  const early = { ...OWN, earlier: OWN.earlier?.map((was) => ({ ...was, until: SINCE_EVER })) };
  expect(fundamentalOn(early, "0001-01-01")).toBe(early);
  expect(definitionDays(OWN, [CHANGED, "2031-12-31"])).toEqual([]);
  expect(definitionDays(OWN, ["2031-01-01", CHANGED])).toEqual([CHANGED]);
  expect(fundamentalOn(HINGE, CHANGED)).toBe(HINGE);
});

test("retired, it is read until the day before", () => {
  expect(["2031-02-28", CHANGED].map((day) => isRead({ retiredOn: CHANGED }, day))).toEqual([true, false]);
  expect([isRead({ retiredOn: null }, CHANGED), isRead(HINGE, CHANGED)]).toEqual([true, true]);
});
