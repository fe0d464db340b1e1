import type { Threshold } from "./threshold";

/** Thresholds of the comparison of drills across students. They decide no verdict on a student; the policy holds them all the same, so that its version
 * names them and a call can replace them. */
export const COMPARE_THRESHOLDS = {
  runSessions: {
    value: 3,
    unit: "used sessions before the start",
    bounds: [1, 20],
    reason: "a drill is begun after a bad run; what comes back by itself is judged from its depth",
    source: "own simulation",
  },
  otherRunSessions: {
    value: 2,
    unit: "used sessions before the start",
    bounds: [1, 20],
    reason: "the run taken shorter, to see whether the estimate hangs on how long it is taken to be",
    source: "own choice",
  },
  earlierSessions: {
    value: 2,
    unit: "used sessions before the run",
    bounds: [2, 20],
    reason: "a level and a slope before the run take two sessions; shorter histories are compared among themselves",
    source: "the columns of the model",
  },
  afterSessions: {
    value: 8,
    unit: "used sessions from the start, the most that count",
    bounds: [1, 40],
    reason: "long enough for a drill to work, short enough to be its work",
    source: "common practice, no source",
  },
  retentionFrom: {
    value: 21,
    unit: "days after the end",
    bounds: [1, 366],
    reason: "what stays is seen weeks after practice has ended",
    source: "common practice, no source",
  },
  retentionTo: {
    value: 120,
    unit: "days after the end",
    bounds: [1, 1000],
    reason: "later sessions tell of other things",
    source: "common practice, no source",
  },
  rested: {
    value: 7,
    unit: "days without practice, where they are known",
    bounds: [0, 366],
    reason: "performance right after practice is not learning",
    source: "Guadagnoli and others 2002",
  },
  waiters: {
    value: 8,
    unit: "students",
    bounds: [2, 1000],
    reason: "fewer can't say how far a bad run comes back by itself",
    source: "own simulation",
  },
  estimated: {
    value: 5,
    unit: "students on a drill",
    bounds: [2, 1000],
    reason: "no drill is ranked under five",
    source: "common practice, no source",
  },
  judged: {
    value: 10,
    unit: "students on a drill",
    bounds: [2, 1000],
    reason: "under ten a drill worth .8 of a session's sd is found in less than half of academies",
    source: "own simulation",
  },
  shallowest: {
    value: 0,
    unit: "quantile of how deep the runs before drills were",
    bounds: [0, 1],
    reason: "a run without a drill is equally bad where it is as deep as all but the shallowest before drills",
    source: "own choice",
  },
  addedDegrees: {
    value: 3,
    unit: "degrees of freedom beyond the students on a drill",
    bounds: [0, 100],
    reason: "the fewer are on a drill, the less is known of their spread",
    source: "own simulation",
  },
  falseWorks: {
    value: 0.025,
    unit: "chance of one false “works” among all drills, one-sided",
    bounds: [0.0001, 0.5],
    reason: "the 95 of 100 interval lies above none, all drills together",
    source: "Holm 1979",
  },
} as const satisfies Record<string, Threshold>;
