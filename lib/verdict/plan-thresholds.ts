import type { Threshold } from "./threshold";

/** Thresholds of the plan of a student's next film. They decide no verdict, only what is proposed. */
export const PLAN_THRESHOLDS = {
  planFundamentals: {
    value: 3,
    unit: "fundamentals of a plan, the one in hand among them",
    bounds: [1, 8],
    reason: "one in hand and two keeps in rotation: more is not read in the minutes that there are",
    source: "SEASON.md 12",
  },
  planSwings: {
    value: 5,
    unit: "swings of what is in hand, unless a plan that would settle it asks for others",
    bounds: [1, 20],
    reason: "five of three to ten swings; beyond that the day and the camera, which all swings share, decide",
    source: "TRADE.md 1, step 3, and the worked errors of 3 (common practice)",
  },
  planKeepSwings: {
    value: 3,
    unit: "swings of a keep",
    bounds: [1, 20],
    reason: "one or two cheap readings guard what is kept; three make a session that counts as others do",
    source: "TRADE.md 1, step 10 (common practice)",
  },
  planReadingSeconds: {
    value: 15,
    unit: "seconds to read one value from a still",
    bounds: [1, 600],
    reason: "the slower end of 10 to 15 seconds: a plan that promises too little time isn't kept",
    source: "TRADE.md 1, step 3 (common practice)",
  },
  planSwingSeconds: {
    value: 10,
    unit: "seconds to find the stills of one swing in one view",
    bounds: [0, 600],
    reason: "opening a swing and stepping to its checkpoints is paid once a swing, however many values are read",
    source: "own choice, not measured",
  },
  planViewSeconds: {
    value: 60,
    unit: "seconds to check where the phone stood, a view",
    bounds: [0, 600],
    reason: "each clip is checked before it is read",
    source: "TRADE.md 1, step 2 (common practice)",
  },
  planMinutes: {
    value: 15,
    unit: "minutes of a coach a film, beyond which a keep is left for the next film",
    bounds: [1, 120],
    reason: "sixty students and an hour: what takes longer isn't read",
    source: "TRADE.md 1, step 3: a cap of 15 minutes (common practice)",
  },
  planDueDays: {
    value: 7,
    unit: "days until the film, unless the coach says otherwise",
    bounds: [1, 366],
    reason: "a dose is given for a week, and films of different days settle most",
    source: "TRADE.md 1, step 8: every one to three weeks (common practice)",
  },
  planAsks: {
    value: 2,
    unit: "films in a row that lacked a view or a swing that was asked for, after which it is planned without",
    bounds: [1, 10],
    reason: "asked a third time a family hears that what it sends isn't good enough",
    source: "SEASON.md 12",
  },
} as const satisfies Readonly<Record<string, Threshold>>;

/** What a loss costs while a fundamental rests: how many are noticed within so many sessions that read it. */
export const RESTING = {
  /** Of losses of 3 U of what has two goal edges, the worse case. */
  noticed: [
    { sessions: 2, share: 0.5 },
    { sessions: 4, share: 0.85 },
  ],
  source: "tests/calibration/last-watch.md, seed 20261134: .498 ± .018 and .846 ± .013",
} as const;
