import type { Threshold } from "./threshold";

/** Thresholds of the caution about a young body's load. They decide no verdict. */
export const LOAD_THRESHOLDS = {
  juniorAge: {
    value: 18,
    unit: "years, the last in which the caution is said",
    bounds: [0, 30],
    reason: "up to then a body grows, and the hours of a week are held against its age",
    source: "the cautions under every page (caution.junior-load)",
  },
  minutesPerYear: {
    value: 60,
    unit: "minutes a week for each year of age, beyond which it is said",
    bounds: [1, 1000],
    reason: "an hour a week for each year: more goes with more overuse injuries",
    source:
      "Jayanthi and others, through a summary: odds of serious overuse injury 2.07 when weekly hours of sport exceed the age",
  },
  drillMinutes: {
    value: 75,
    unit: "minutes a week that the drills of a young body ask for, beyond which it is said",
    bounds: [1, 1000],
    reason: "15 minutes on 5 days are the most that is usual",
    source: "common practice, no source (TRADE.md 5: 10 to 15 minutes, 4 to 5 days a week)",
  },
  drillReps: {
    value: 300,
    unit: "repeats a week that they ask for, beyond which it is said",
    bounds: [1, 10000],
    reason: "40 slow repeats and 20 balls on 5 days are the most that is usual; full swings are the costly part",
    source: "common practice, no source (TRADE.md 5: 20 to 40 slow repeats and 10 to 20 balls)",
  },
  drillDays: {
    value: 5,
    unit: "days a week that one of them asks for, beyond which it is said",
    bounds: [1, 7],
    reason: "a young body needs days of rest in every week",
    source: "common practice, no source (TRADE.md 5)",
  },
} as const satisfies Record<string, Threshold>;
