import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { type CountedDrill, drillPractice } from "@/lib/domain/drill-practice";
import type { Practice } from "@/lib/domain/practice";

const given: CountedDrill = {
  id: "g1",
  start: "2026-09-01",
  end: null,
  minutesADay: 10,
  daysAWeek: 5,
  remeasureOn: "2026-09-22",
};
const entry = (day: string, facts: Partial<Practice> = {}): Practice => ({
  ...{
    id: day,
    day,
    assignmentId: "g1",
    minutes: 10,
    balls: null,
    felt: null,
    source: "told",
    who: "",
    voidedAt: null,
  },
  ...{ recordedAt: `${day}T18:00:00.000Z` },
  ...facts,
});
const context = { today: "2026-09-22", remeasured: [], rest: 7, events: [] } as const;

describe("practice of a drill, asked and logged", () => {
  it("asks 5 days a week of 22 days less the 7 that rest before the film: 11", () => {
    const counted = drillPractice(given, [entry("2026-09-02"), entry("2026-09-03", { balls: 20 })], context);
    expect(counted).toEqual({
      ...{ from: "2026-09-01", to: "2026-09-22", days: 22, stoppedDays: 0, restDays: 7, asked: 11 },
      // 11 days of 10 minutes.
      ...{ askedMinutes: 110, practised: 2 },
      ...{ minutes: 20, balls: 20, lastLogged: "2026-09-03", unnamed: 0 },
    });
  });

  it("nothing logged is no number of minutes, and days a week that nobody said ask for nothing that is counted", () => {
    const counted = drillPractice({ ...given, daysAWeek: null }, [], context);
    expect(drillPractice({ ...given, minutesADay: null }, [], context)).toMatchObject({
      asked: 11,
      askedMinutes: null,
    });
    expect(counted).toMatchObject({
      asked: null,
      askedMinutes: null,
      practised: 0,
      minutes: null,
      balls: null,
      lastLogged: null,
    });
  });

  it("counts days and not entries, its own alone; other drills, days outside and what was taken back are left out", () => {
    const practice = [
      ...[entry("2026-09-02"), entry("2026-09-02", { id: "twice" }), entry("2026-08-31"), entry("2026-09-23")],
      ...[entry("2026-09-04", { assignmentId: "g2" }), entry("2026-09-05", { voidedAt: "2026-09-06T08:00:00.000Z" })],
      ...[entry("2026-09-06", { assignmentId: null }), entry("2026-09-02", { id: "free", assignmentId: null })],
    ];
    expect(drillPractice(given, practice, context)).toMatchObject({ practised: 1, minutes: 20, unnamed: 1 });
  });

  it("ends with the drill, begins not before it, and rests before every day on which it was measured", () => {
    expect(drillPractice({ ...given, start: "2026-09-23" }, [], context)).toBeNull();
    expect(drillPractice({ ...given, end: "2026-09-07", remeasureOn: null }, [], context)).toMatchObject({
      ...{ to: "2026-09-07", days: 7, asked: 5 },
    });
    const kept = { ...given, remeasureOn: "2026-10-13" };
    const later = { ...context, today: "2026-10-13", remeasured: ["2026-09-22"] };
    expect(drillPractice(kept, [], later)).toMatchObject({ days: 43, restDays: 14, asked: 21 });
    // Measured again after five days: no week of rest fits in between.
    expect(drillPractice({ ...given, remeasureOn: "2026-09-06" }, [], context)).toMatchObject({ restDays: 0 });
  });

  it("asks for nothing in a pause, whatever it is for: 5 a week of 22 days less 10 of pause and 4 more of rest make 6", () => {
    const pause = { kind: "pause", day: "2026-09-08", endDay: "2026-09-17" } as const;
    const events = [pause, { ...pause, kind: "injury", day: "2026-09-10" } as const];
    expect(drillPractice(given, [entry("2026-09-09")], { ...context, events })).toMatchObject({
      ...{ days: 22, stoppedDays: 10, restDays: 4, asked: 6, practised: 1 },
    });
    expect(drillPractice(given, [], { ...context, events: [{ kind: "pause", day: "2026-08-01" }] })).toMatchObject({
      ...{ stoppedDays: 22, restDays: 0, asked: 0 },
    });
  });

  it("counts from a later day, with the rest that the whole drill has: 5 a week of 10 days less 7", () => {
    const practice = [entry("2026-09-12"), entry("2026-09-13")];
    expect(drillPractice(given, practice, { ...context, since: "2026-09-13" })).toMatchObject({
      ...{ from: "2026-09-13", days: 10, restDays: 7, asked: 2, practised: 1 },
    });
    expect(drillPractice(given, [], { ...context, since: "2026-08-13" })).toMatchObject({ from: "2026-09-01" });
    expect(drillPractice({ ...given, end: "2026-09-12" }, [], { ...context, since: "2026-09-13" })).toBeNull();
  });

  it("never asks for more days than there are, and never for fewer as days go by", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 7 }),
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 0, max: 21 }),
        (daysAWeek, wait, rest) => {
          const drill = { ...given, daysAWeek, remeasureOn: dayFromNumber(dayNumber(given.start) + wait) };
          let before = 0;
          for (let at = 0; at < 80; at++) {
            const today = dayFromNumber(dayNumber(given.start) + at);
            const counted = drillPractice(drill, [], { today, remeasured: [], rest, events: [] });
            expect(counted?.asked ?? -1).toBeGreaterThanOrEqual(before);
            expect(counted?.asked ?? 99).toBeLessThanOrEqual(at + 1);
            before = counted?.asked ?? 0;
          }
        },
      ),
      { numRuns: 60, seed: 7 },
    );
  });
});
