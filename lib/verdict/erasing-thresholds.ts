import type { Threshold } from "./threshold";

/** Thresholds of how long anything is kept, and of the clock by which it is erased. */
export const ERASING_THRESHOLDS = {
  noticeDays: {
    value: 30,
    unit: "days between announcing and erasing",
    bounds: [30, 365],
    reason: "whoever is away for a month's holiday still sees it in time to keep the record",
    source: "own choice",
  },
  copyDays: {
    value: 35,
    unit: "days for which a copy is kept",
    bounds: [1, 35],
    reason: "a month of copies, and a few days in which the next one can be made and compared",
    source: "promise 11 of the trust bar: erased from backups within 35 days",
  },
  leapHours: {
    value: 48,
    unit: "hours between two sights of the clock",
    bounds: [24, 168],
    reason:
      "a machine that is off over a weekend, or whose clock is wrong, erases nothing until somebody says that the day is right",
    source: "case D8 of the trust bar",
  },
  draftDays: {
    value: 90,
    unit: "days for which a form that nobody touches waits",
    bounds: [30, 365],
    reason: "a quarter of a season; what was typed then is remembered by nobody",
    source: "own choice",
  },
  receiptDays: {
    value: 90,
    unit: "days for which the answer to a saved form is remembered",
    bounds: [90, 365],
    reason: "as long as the form may wait, so that it is never saved twice",
    source: "own choice",
  },
  tryDays: {
    value: 30,
    unit: "days for which wrong passwords are counted",
    bounds: [1, 365],
    reason: "the longest wait between two tries is over long before",
    source: "own choice",
  },
  nightHour: {
    value: 3,
    unit: "hour of the academy's day",
    bounds: [0, 23],
    reason: "nobody films then; a machine that is off at night does it when it is next on",
    source: "own choice",
  },
} as const satisfies Readonly<Record<string, Threshold>>;
