import type { Threshold } from "./threshold";

/** What puts a student on a list of the brief on top of the roster. None of them alters a verdict. */
export const BRIEF_THRESHOLDS = {
  painDays: {
    value: 14,
    unit: "days since the family last said that it hurts",
    bounds: [1, 120],
    reason: "within two weeks it is still a thing to ask about; later the season's page alone says it",
    source: "own choice",
  },
  asideFilms: {
    value: 2,
    unit: "latest films of which nothing counts",
    bounds: [1, 20],
    reason: "one is an accident, two in a row are a way of filming",
    source: "own choice",
  },
  fewFilmsAfter: {
    value: 42,
    unit: "days since the first film",
    bounds: [7, 400],
    reason: "a film every ten days makes four by then; before that too few films are the usual state and no matter",
    source: "own choice",
  },
  noPlanAfter: {
    value: 84,
    unit: "days since the first film",
    bounds: [7, 400],
    reason: "in the first twelve weeks it is the usual state that no plan is found, and no call to act",
    source:
      "own simulation: of 60 students filmed every six to sixteen days none is found for 33 at week 6, for 6 at week 20",
  },
  stalledDays: {
    value: 56,
    unit: "days without a gain on the roster's list",
    bounds: [14, 400],
    reason: "eight weeks of work without a proved gain are worth a look at the drill, the band and the films",
    source: "TRADE.md, story 23",
  },
} as const satisfies Readonly<Record<string, Threshold>>;
