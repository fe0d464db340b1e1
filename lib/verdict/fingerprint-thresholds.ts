/** One threshold of the camera's fingerprint. No call overrides it: it acts before the engine, on whole students. */
export interface FingerprintThreshold {
  readonly value: number;
  readonly unit: string;
  readonly reason: string;
  readonly source: string;
}

/** Every threshold by which a jump of several fundamentals is put down to the camera. */
export const FINGERPRINT_THRESHOLDS = {
  fullReach: {
    value: 1.5,
    unit: "sds from the middle, within which a swing or a student counts in full",
    reason: "one that was read wrongly must not move the middle of the others; as in the engine",
    source: "Huber 1964: nearly all of the mean's power where nothing is wrong",
  },
  fewestTogether: {
    value: 3,
    unit: "fundamentals of one view in a session",
    reason: "two that move together may as well be one change of the student that both show",
    source: "common practice, no source",
  },
  fewestWitnesses: {
    value: 2,
    unit: "of them that a phone off to the side moves much",
    reason: "a shift that only one shows is no pattern",
    source: "the definition of a pattern",
  },
  referenceLeast: {
    value: 3,
    unit: "earlier used sessions",
    reason: "below that the usual level is hardly known",
    source: "own choice",
  },
  referenceMost: {
    value: 6,
    unit: "latest earlier used sessions",
    reason: "a usual level of long ago is no longer the usual one; more sessions than that hardly sharpen it",
    source: "own choice",
  },
  dayWeight: {
    value: 6,
    unit: "sessions that the usual day-to-day sd counts for",
    reason: "three to six sessions alone say too little about how a student wavers",
    source: "own choice",
  },
  swingFromReader: {
    value: 2,
    unit: "swing sd over reader sd",
    reason: "starting value of the swing sd where too few swings were read",
    source: "common practice, no source",
  },
  carriedSd: {
    value: 0.7,
    unit: "degrees",
    reason: "the lean of one day is carried through the swing, so leans of one session are not independent",
    source: "common practice, no source",
  },
  movedShare: {
    value: 0.05,
    unit: "share of sessions",
    reason:
      "how often a phone stands where its record doesn't say; at twice as much, two true changes at once were put down to the camera in .017 of seasons",
    source: "own choice, checked by own simulation",
  },
  movedSd: {
    value: 8,
    unit: "degrees of yaw face-on, of the offset's angle down the line",
    reason: "a big step to the side at three to four metres",
    source: "common practice, no source",
  },
  movedRollSd: {
    value: 1.5,
    unit: "degrees",
    reason: "a phone put down elsewhere leans otherwise, too",
    source: "common practice, no source",
  },
  carriedShare: {
    value: 0.01,
    unit: "share of sessions",
    reason: "how often all leans change alike: a roll, or a student who leans otherwise from setup to impact",
    source: "own choice",
  },
  carriedChangeSd: {
    value: 5,
    unit: "degrees",
    reason: "such a change is as large as what coaches work for",
    source: "own choice",
  },
  changeShare: {
    value: 0.03,
    unit: "share of fundamentals that change in a session, on most days",
    reason: "a season has one or two true changes in a dozen sessions",
    source: "own choice",
  },
  busyShare: {
    value: 0.3,
    unit: "share of fundamentals that change in a session, on a busy day",
    reason: "a new set-up changes several things at once; what can't be the camera then speaks for the student",
    source: "own choice",
  },
  busyDays: {
    value: 0.1,
    unit: "share of sessions that are busy days",
    reason: "one in ten follows a lesson that changed several things",
    source: "own choice",
  },
  mostChanges: {
    value: 4,
    unit: "own changes weighed at once",
    reason: "sets of more have next to no weight, and their number grows fast",
    source: "binomial tail at the shares above",
  },
  changeSize: {
    value: 4,
    unit: "sds of a session mean",
    reason: "sd of a change of the student's own; a wide belief also bears a wild value",
    source: "own choice",
  },
  offFromYaw: {
    value: 3,
    unit: "degrees of yaw",
    reason: "a phone within it counts as square",
    source: "common practice, no source",
  },
  offFromOffset: {
    value: 1.5,
    unit: "degrees of the offset's angle: 10 cm at 4 m",
    reason: "a phone within it counts as on the line",
    source: "common practice, no source",
  },
  suspected: {
    value: 0.3,
    unit: "probability that the fundamentals share a shift",
    reason:
      "a session that may well be shifted is no usual one, and is weighed with the next that looks so: yaw of 8 degrees that stays was named at .55 of its later sessions, at .42 with one half",
    source: "own simulation",
  },
  named: {
    value: 0.95,
    unit: "probability that the phone stood off by more than that, on one side",
    reason:
      "withdrawing a student's gain asks as much as claiming one; of unchanged seasons with checked phones none was named, of those without any record .005",
    source: "95 of 100 as everywhere",
  },
} as const satisfies Readonly<Record<string, FingerprintThreshold>>;

type Name = keyof typeof FINGERPRINT_THRESHOLDS;

/** The thresholds in force. */
export const FINGERPRINT = Object.fromEntries(
  Object.entries(FINGERPRINT_THRESHOLDS).map(([name, threshold]) => [name, threshold.value]),
) as Readonly<Record<Name, number>>;
