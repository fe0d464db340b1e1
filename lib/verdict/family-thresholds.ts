import type { Threshold } from "./threshold";

/** Thresholds of a family's page. They decide no verdict, only how much is told to whom. */
export const FAMILY_THRESHOLDS = {
  youngAge: {
    value: 9,
    unit: "years; until they are surely reached by the year of birth, no numbers and no slips are told",
    bounds: [0, 18],
    reason: "numbers and bands are not made for this age; contact and fun come first",
    source: "SEASON.md 24",
  },
  youngMost: {
    value: 2,
    unit: "things told to whoever is younger",
    bounds: [1, 20],
    reason: "more is no help to them",
    source: "SEASON.md 24",
  },
  adultAge: {
    value: 18,
    unit: "years; from when they are surely reached by the year of birth, the sentences are a grown-up's",
    bounds: [0, 130],
    reason:
      "whoever is younger is told to tell a grown-up what hurts, and whose age isn't known is told the plainer words",
    source: "SEASON.md 24, 25; the usual age of majority (common practice, no source)",
  },
  changedMost: {
    value: 3,
    unit: "changes among the first sentences; what is left is told below them",
    bounds: [1, 20],
    reason: "the latest are what the page is read for",
    source: "IDENTITY.md: one page, one task (common practice, no source)",
  },
  streakLeast: {
    value: 3,
    unit: "videos in a row that were good to use, from which that is said before what is held",
    bounds: [2, 50],
    reason: "two in a row come by chance",
    source: "own choice",
  },
  freshWeeks: {
    value: 8,
    unit: "weeks from the end of a change away from the goal, after which its month is told too",
    bounds: [0, 104],
    reason: "“have started to” alone says that it is new",
    source: "own choice",
  },
  newDrillWeeks: {
    value: 4,
    unit: "weeks from its first day in which a drill counts as the new one, after long weeks without a change",
    bounds: [0, 52],
    reason: "so no page says that the drill will be changed when it was",
    source: "own choice",
  },
  eventWeeks: {
    value: 8,
    unit: "weeks before the end of a change in which an event is told beside it",
    bounds: [0, 52],
    reason: "growth, new clubs and a pause show for some weeks; it is told as what can be, never as the cause",
    source: "TRADE.md 5: growth drift is no relapse (common practice, no source)",
  },
  contactBalls: {
    value: 25,
    unit: "counted balls, from which more is said of contact than that they are too few",
    bounds: [1, 1000],
    reason: "as many as the raw counts of the latest sessions are shown over",
    source: "lib/verdict/contact-thresholds.ts, latestBalls",
  },
  contactWeeks: {
    value: 3,
    unit: "weeks by which a change of contact and one of the work may lie apart and still be told as at about the same time",
    bounds: [0, 26],
    reason: "a few sessions, within which neither's day is known",
    source: "own choice",
  },
  logDays: {
    value: 7,
    unit: "days of practice on the page",
    bounds: [1, 60],
    reason: "a week is what a dose is given for",
    source: "SEASON.md 24 and the picture of the page",
  },
} as const satisfies Record<string, Threshold>;
