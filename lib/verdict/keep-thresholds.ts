import type { Threshold } from "./threshold";

/** Thresholds of what is owned and only kept. They decide no verdict. */
export const KEEP_THRESHOLDS = {
  restEvery: {
    value: 3,
    unit: "films, of which one is read",
    bounds: [2, 20],
    reason: "a settled, owned fundamental rests, so that minutes go where something is open",
    source: "SEASON.md 12",
  },
  signFilms: {
    value: 2,
    unit: "films read on a new level",
    bounds: [1, 10],
    reason: "within two the alarm saw .53 of losses of three sds of a session mean, in simulation",
    source: "own simulation (last-watch.md)",
  },
  shortMinutes: {
    value: 10,
    unit: "minutes a day",
    bounds: [1, 60],
    reason: "the old feel is looked for again, not learned anew: the lower end of a usual dose",
    source: "common practice, no source",
  },
  shortDays: {
    value: 3,
    unit: "days a week",
    bounds: [1, 7],
    reason: "fewer days than a usual dose, so that what is in hand keeps its own",
    source: "common practice, no source",
  },
  shortReps: {
    value: 15,
    unit: "slow repetitions",
    bounds: [1, 200],
    reason: "below the twenty to forty of a usual dose",
    source: "common practice, no source",
  },
  releaseDays: {
    value: 42,
    unit: "days after it became owned",
    bounds: [1, 1000],
    reason: "until then the next one is named where no drill was given for it; later it is no news",
    source: "own choice: six weeks, as for “to be checked”",
  },
} as const satisfies Readonly<Record<string, Threshold>>;
