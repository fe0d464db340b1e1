import type { Threshold } from "./threshold";

/** Thresholds of what is said after a long time without a change. They decide no verdict. */
export const PLATEAU_THRESHOLDS = {
  plateauWeeks: {
    value: 10,
    unit: "weeks without a change",
    bounds: [1, 104],
    reason: "before that most open questions are open because there are few films",
    source: "SEASON.md 23",
  },
  plateauShare: {
    value: 0.6,
    unit: "share of the days asked for, from which practice counts as done",
    bounds: [0.01, 1],
    reason: "a missed day does no harm; with fewer than six of ten days the drill was not tried",
    source: "own choice; TRADE.md 5 (one missed day did no harm)",
  },
  plateauDaysAWeek: {
    value: 2,
    unit: "days a week, from which practice counts as done where nobody said how many were asked for",
    bounds: [1, 7],
    reason: "half of the four to five days that are usual",
    source: "TRADE.md 5, typical dose (common practice)",
  },
} as const satisfies Readonly<Record<string, Threshold>>;
