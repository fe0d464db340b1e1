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
    source: "the cautions under every page (caution.junior-load)",
  },
} as const satisfies Record<string, Threshold>;
