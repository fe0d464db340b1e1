import type { CalendarDay } from "./calendar-day";

/** The four verdicts. */
export const VERDICTS = ["gain", "slip", "steady", "open"] as const;

/** One of the four verdicts. */
export type Verdict = (typeof VERDICTS)[number];

/** An estimate with its intervals, all in one unit. */
export interface Interval {
  readonly estimate: number;
  readonly low80: number;
  readonly high80: number;
  readonly low95: number;
  readonly high95: number;
}

/** A proved change. Indices are 0-based positions in date order of the first session of the new level. */
export interface ProvedChange {
  readonly verdict: Verdict;
  readonly shape: "step" | "gradual";
  readonly from: CalendarDay;
  readonly to: CalendarDay;
  readonly set80: readonly number[] | null;
  readonly set95: readonly number[] | null;
  readonly size: Interval;
  /** Level before and after, with their intervals; a printed difference is theirs. */
  readonly before: Interval;
  readonly after: Interval;
  readonly moved: Moved | null;
  /** Date of the look at which it was first proved. */
  readonly provedOn: CalendarDay;
}

/** A proved move that is neither better nor worse by itself: both levels inside the band, or from outside one side to outside the other. */
export type Moved = "within" | "through";

/** A plan that would settle an open track, or why there is none. */
export type SettlePlan =
  | { readonly sessions: number; readonly swingsEach: number; readonly captureSd: number; readonly chance: number }
  | { readonly none: SettleObstacle; readonly sessionsToFirstLook: number };

/**
 * Why no plan is offered.
 *
 * `first-look`: too few sessions so far for anything to be settled, and no plan reaches far enough; `no-plan`: the largest plan
 * would settle it in fewer than four of five futures.
 */
export type SettleObstacle = "first-look" | "no-plan" | "not-told-apart";

/** Which way a change goes. */
export type Direction = "up" | "down";

/** A plan that would prove the change that an open track points to, if that is real and at least as big as it looks. */
export type ConditionalPlan = {
  readonly direction: Direction;
  /** As big as it looks now, in the unit; above 0 for up. Smaller ones may never be known. */
  readonly size: number;
  /** Of the condition: a lasting change that way of at least that size. */
  readonly probability: number;
} & (
  | {
      readonly sessions: number;
      readonly swingsEach: number;
      readonly captureSd: number;
      /** Of a proof that stands at the plan's end, given the condition. */
      readonly chance: number;
      /** The same given a lasting change that way of whatever size. */
      readonly chanceAnySize: number;
    }
  /** Even the largest plan proves it in fewer than four of five futures: in `bestChance` of them. */
  | { readonly none: "no-plan"; readonly bestChance: number }
);

/** The largest plan, and what it would exclude if nothing has changed. */
export interface ExcludingPlan {
  readonly sessions: number;
  readonly swingsEach: number;
  readonly captureSd: number;
  /** Any change would then be known to be smaller than this, in the unit. */
  readonly changeBelow: number;
  /** Of that, given that nothing has changed. */
  readonly chance: number;
}

/**
 * When the level of a proved gain first lies inside its goal band, as known at the last film.
 *
 * `dates`: a range that holds 80 of 100, never being reached counted in; `stopped-short`: it has as good as surely levelled off
 * short of the band by more than the smallest worthwhile change; `unsaid`: none of both can be said.
 */
export type Reach =
  | {
      readonly kind: "dates";
      readonly from: CalendarDay;
      readonly to: CalendarDay;
      /** That it is reached by the last day looked ahead to. */
      readonly chance: number;
      readonly horizon: CalendarDay;
    }
  | { readonly kind: "stopped-short"; readonly chance: number }
  | { readonly kind: "unsaid"; readonly why: ReachObstacle };

/**
 * Why no date is said: too few films since the change; the level is too close to the band to be told apart from it, or
 * lies short of it by less than a worthwhile change; the last proved change leads away from it; it may come any time or
 * never.
 */
export type ReachObstacle = "too-few" | "close" | "away" | "too-wide";

/** One look: what would have been said on that day. */
export interface LookVerdict {
  readonly date: CalendarDay;
  readonly verdict: Verdict;
  readonly logBayesFactor: number;
  readonly directionUp: number;
  readonly listed?: boolean;
}

/** Where the level lies against the goal band, from the first film on. */
export type Position = "inside" | "outside" | "edge";

/** A move that would be proved, had not a reader or a place of the camera changed with it. */
export interface NotToldApart {
  readonly from: "reader" | "placement";
  readonly direction: "up" | "down";
  /** Date of the first session of the new reader or place. */
  readonly on: CalendarDay;
}

/** An early alarm on an owned track: its latest used sessions lie off its level, away from the goal. No proof of a change. */
export interface OwnedWatch {
  /** Date of the first of those sessions. */
  readonly since: CalendarDay;
  /** Used sessions from that one on. */
  readonly sessions: number;
  /** Date of the look that raised it. */
  readonly raisedOn: CalendarDay;
  /** Which way they lie. */
  readonly direction: Direction;
  /** Their level less the one before, in the unit, as it looks. */
  readonly size: Interval;
  /** Natural log: how many times better they fit a level of their own, about three sds of a session mean off, than the old one. */
  readonly logBayesFactor: number;
}

/** Everything that is said of one track as of its last session. */
export interface TrackVerdict {
  readonly id: string;
  readonly policyVersion: string;
  readonly sessions: number;
  readonly swings: number;
  readonly verdict: Verdict;
  readonly assumed: "up" | null;
  readonly moved: Moved | null;
  readonly evidence: {
    readonly logBayesFactor: number;
    readonly directionUp: number;
    readonly limit: number;
    readonly noChange: number;
    readonly priorChange: number;
  };
  /** As of the latest look, against the goal then in force: what its word was decided with. */
  readonly smallestWorthwhile: number | null;
  readonly unitSd: number | null;
  readonly noiseModel: string;
  readonly changes: readonly ProvedChange[];
  readonly change: ProvedChange | null;
  /** While open: any change now is as good as certain to be smaller than this, in the unit; null: too few sessions. */
  readonly changeBelow: number | null;
  /** While open; null: nothing of that kind explains a move. */
  readonly notToldApart: NotToldApart | null;
  readonly levelNow: Interval | null;
  readonly bandShare: Interval | null;
  readonly trend: { readonly perDay: number; readonly low95: number; readonly high95: number } | null;
  readonly settle: SettlePlan | null;
  /** Null unless open, or where it doesn't point to a change. */
  readonly settleIfReal: ConditionalPlan | null;
  /** Median camera sd of the used sessions, against which a plan's is more care; null unless open and measured. */
  readonly usualCaptureSd: number | null;
  /** Null unless open. */
  readonly settleIfNothing: ExcludingPlan | null;
  readonly setAside: readonly { readonly session: number; readonly swing: number; readonly why: string }[];
  /** Null without a goal or a level. */
  readonly position: Position | null;
  /** Null without a goal or a proved change, and inside the band. */
  readonly reach: Reach | null;
  /** The owning rule: since which look's date it has held; null: it doesn't hold. */
  readonly ownedSince: CalendarDay | null;
  /** Null unless owned and off its level lately. */
  readonly watch: OwnedWatch | null;
  /** Sds in the unit: of a day, of one swing, of one reading, of one place of the camera; null without a used session. */
  readonly errorBudget: {
    readonly day: number;
    readonly swing: number;
    readonly reader: number;
    readonly camera: number;
  } | null;
  readonly looks?: readonly LookVerdict[];
  readonly listed?: boolean;
  readonly said?: Verdict;
}
