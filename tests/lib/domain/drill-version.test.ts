import { expect, test } from "vitest";
import {
  changedParts,
  type DrillDescription,
  describedOn,
  type EarlierDrill,
  isOffered,
  parseEarlierDrills,
} from "@/lib/domain/drill-version";

const NOW: DrillDescription = {
  ...{ name: "Wall", fundamentalId: "hip-sway", how: "third", cautions: "", dose: "", retiredOn: null },
  ...{ reps: 15, minutesADay: null, daysAWeek: 5, remeasureDays: 14 },
};
const changed = (how: string, until: string): EarlierDrill => ({
  ...{ ...NOW, how, until },
  ...{ who: "Wren", why: "clearer", changedAt: `${until}T10:00:00.000Z` },
});
const BEFORE = [changed("first", "2031-03-01"), changed("second", "2031-04-01")];

test("on a day a drill is as it was described when that day was over; before all, as it was first", () => {
  const how = (day: string) => describedOn(NOW, BEFORE, day).how;
  expect(["2030-01-01", "2031-02-28", "2031-03-01", "2031-03-31", "2031-04-01", "2032-01-01"].map(how)).toEqual([
    ...["first", "first", "second", "second", "third", "third"],
  ]);
});

test("changed twice on one day, what was between never stood on any day", () => {
  const twice = [changed("first", "2031-03-01"), changed("second", "2031-03-01")];
  expect(["2031-02-28", "2031-03-01"].map((day) => describedOn(NOW, twice, day).how)).toEqual(["first", "third"]);
});

test("what differs is named in the order of a form", () => {
  expect(changedParts(NOW, NOW)).toEqual([]);
  expect(changedParts(NOW, { ...NOW, retiredOn: "2031-05-01", name: "W", reps: null })).toEqual([
    ...["name", "reps", "retiredOn"],
  ]);
});

test("retired, it is offered until the day before", () => {
  const retired = { retiredOn: "2031-05-01" };
  expect(["2031-04-30", "2031-05-01"].map((day) => isOffered(retired, day))).toEqual([true, false]);
  expect(isOffered(NOW, "2031-05-01")).toBe(true);
});

test("reads back what was kept, and throws for anything else", () => {
  expect(parseEarlierDrills(JSON.stringify(BEFORE))).toEqual(BEFORE);
  expect(parseEarlierDrills("[]")).toEqual([]);
  for (const text of ["", "{}", "[1]", JSON.stringify([{ ...BEFORE[0], reps: -1 }])])
    expect(() => parseEarlierDrills(text)).toThrow();
});
