/** An estimate and the ends of its 95 of 100 interval. */
export interface Estimate {
  readonly estimate: number;
  readonly low95: number;
  readonly high95: number;
}

/** What is said of a drill. */
export type DrillSays = "works" | "no-better" | "cant-tell" | "too-few";

/** What an effect is measured against. */
export type Against = "waiting" | "no-drill-recorded" | "other-drills";

/** One drill, compared. Effects are in the unit; above 0 is better than what they are measured `against`. */
export interface DrillResult {
  readonly drill: string;
  readonly students: number;
  /** Used sessions from the start that count. */
  readonly sessions: number;
  readonly against: Against;
  /** Of the students, those to whom chance gave the drill. */
  readonly byChance: number;
  /** On the mean of the next sessions; null under five students, or where it can't be told from a coach's own. */
  readonly effect: Estimate | null;
  readonly retained: Estimate | null;
  /** Of the students, those with a session well after the end: on them `retained` rests. */
  readonly retainedStudents: number;
  /** The same as `effect` on the share of swings inside the goal band, 0 to 1; null without a goal as well. */
  readonly bandShare: Estimate | null;
  /** One-sided, after Holm over all drills with an effect, and over the groups that could be chosen; null without one. */
  readonly pAdjusted: number | null;
  readonly says: DrillSays;
}

/** Mean after less mean before, of the same students. */
export interface BeforeAfterResult {
  readonly drill: string;
  readonly students: number;
  readonly before: number;
  readonly after: number;
  /** Share of pairs of a session before and one after in which the later is better, the mean of the students. */
  readonly higher: number;
  /** Null under two students. */
  readonly change: Estimate | null;
}

/** How much an effect hangs on. Ranges are of the estimate. */
export interface DrillSensitivity {
  readonly drill: string;
  readonly coachLeftOut: { readonly low: number; readonly high: number } | null;
  readonly studentLeftOut: { readonly low: number; readonly high: number } | null;
  /** The estimate with the run before the start taken shorter. */
  readonly otherRun: number | null;
  /** With age and hand among the columns; null where neither is on file. */
  readonly withAgeAndHand: number | null;
  /** How strong a reason that isn't on file would have to be, as a risk ratio; for the estimate and for its interval. */
  readonly hiddenReason: { readonly estimate: number; readonly interval: number } | null;
}

/** A caution, by its name and the count it is about. */
export interface Caveat {
  readonly code: (typeof CAVEAT_CODES)[number];
  readonly count: number;
}

/** Cautions, in the order in which they are said. */
export const CAVEAT_CODES = [
  "hidden-choice",
  "not-marked",
  "no-reference",
  "no-before",
  "no-after",
  "short-history",
  "few-after",
  "overlap",
  "not-told-from-coach",
  "no-dose",
  "by-chance",
] as const;

/** The comparison of drills across the students of an academy, for one fundamental. */
export interface Comparison {
  /** Students compared: on a drill, or in the reference. */
  readonly students: number;
  readonly reference:
    | { readonly kind: "waiting" | "no-drill-recorded"; readonly students: number; readonly cameBack: Estimate }
    | { readonly kind: "none"; readonly have: number; readonly need: number };
  readonly smallestWorthwhile: number | null;
  /** Most students first. */
  readonly drills: readonly DrillResult[];
  readonly beforeAfter: readonly BeforeAfterResult[];
  readonly sensitivity: readonly DrillSensitivity[];
  /** What an hour more of logged practice goes with, in the unit; null under ten students who log. */
  readonly perHour: { readonly students: number; readonly effect: Estimate } | null;
  /** What a year of age, and the left hand, go with, in the unit; null where too few are on file. */
  readonly perYear: Estimate | null;
  readonly leftHanded: Estimate | null;
  readonly caveats: readonly Caveat[];
}
