import type { BuiltInId } from "@/lib/domain/catalogue";
import type { ClubGroup } from "@/lib/domain/club-group";
import type { FundamentalId, View } from "@/lib/domain/fundamental";
import type { Hand, SignRule } from "@/lib/domain/handedness";
import type { Circumstance, Placement, Squareness } from "@/lib/domain/session";
import type { EventKind } from "@/lib/domain/student";
import type { Verdict } from "@/lib/domain/track-verdict";
import type { LevelPath } from "./level-path";

/** The fixed today of the demo academy. */
export const DEMO_TODAY = "2026-09-12";

/** First day of the demo's season; days of a plan are counted from it. */
export const DEMO_SEASON_START = "2026-03-01";

/** Last day of the demo's season, counted from its first. */
export const DEMO_LAST_DAY = 195;

/** The coach who reads nearly every film of the demo. */
export const DEMO_READER = "Coach Wren";

/** The coach who takes over one student's films. */
export const SECOND_READER = "Coach Lark";

/** How the phone stood for one view of one session, on paper and in truth. */
export interface CameraPlan {
  readonly placement: Placement;
  readonly placementLabel: string | null;
  readonly squareness: Squareness;
  readonly offBy: number | null;
  /** True yaw in degrees where the story fixes it; null: drawn to fit the record. */
  readonly trueYaw: number | null;
  /** Who placed the phone; absent: not said. */
  readonly placedBy?: string;
  readonly setAsideReason: string | null;
}

/** One planned session. */
export interface SessionPlan {
  /** Days since the season's first. */
  readonly day: number;
  readonly swings: number;
  readonly circumstance: Circumstance;
  readonly aid: string | null;
  readonly reader: string;
  readonly daysSincePractice: number | null;
  readonly marks: readonly string[];
  readonly note: string | null;
  readonly swingNotes: Readonly<Record<number, string>>;
  readonly stanceWidthCm: number | null;
  readonly balls: number | null;
  /** True share of solid strikes. */
  readonly solidShare: number;
  /** A view without a record was not filmed. */
  readonly cameras: Readonly<Partial<Record<View, CameraPlan>>>;
}

/** One planned track; `tilt-kept` is planned, and `top-tilt` follows from it and `setup-tilt`. */
export interface TrackPlan {
  readonly fundamentalId: FundamentalId;
  /** By position among all sessions of the student, whatever their circumstances. */
  readonly path: LevelPath;
  /** Level while an aid is in view; null: the aid changes nothing. */
  readonly aidedLevel: number | null;
  /** Probability that a session lacks this fundamental. */
  readonly missed: number;
  /** Probability that one reading is not measurable. */
  readonly notMeasurable: number;
}

/** The word that a track of a story should end with, and what else makes the story. */
export interface Expectation {
  readonly fundamentalId: BuiltInId;
  /** Any of these words at the last look. */
  readonly words: readonly Verdict[];
  /** The word of the latest proved change may be preceded by these, oldest first; null: whatever. */
  readonly earlier: readonly Verdict[] | null;
  /** Positions among the judged sessions between which the latest change is first proved; null: whenever. */
  readonly provedBetween: readonly [number, number] | null;
  /** Whether the roster's list should hold it at the end. */
  readonly listed: "listed" | "unlisted" | "either";
  /** Judged up to these positions, the owning rule holds. */
  readonly ownedAt?: readonly number[];
  /** Bounds of the mean swing of each of the last `count` judged sessions, and of the mean of those before. */
  readonly lure?: {
    readonly count: number;
    readonly last: readonly [number, number];
    readonly before: readonly [number, number];
  };
}

/** One planned student. */
export interface StudentPlan {
  readonly id: string;
  readonly alias: string;
  readonly birthYear: number;
  readonly hand: Hand;
  readonly zone: string;
  readonly club: string;
  readonly clubGroup: ClubGroup;
  readonly signRule: SignRule;
  /** Factor on the usual day and swing sds. */
  readonly wildness: number;
  readonly correlation: number;
  readonly consentGivenBy: string;
  readonly sessions: readonly SessionPlan[];
  readonly tracks: readonly TrackPlan[];
  readonly heights: readonly { readonly day: number; readonly cm: number }[];
  readonly events: readonly {
    readonly kind: EventKind;
    readonly day: number;
    /** Last day of a break; absent: a day only. */
    readonly endDay?: number;
    readonly note: string;
    readonly rebaselines: readonly FundamentalId[];
  }[];
  readonly assignments: readonly {
    readonly drill: string;
    readonly start: number;
    readonly end: number | null;
    readonly dose: string;
    /** As asked; absent: not said. */
    readonly reps?: number;
    readonly minutesADay?: number;
    readonly daysAWeek?: number;
    readonly stopRule?: string;
    /** Day on which it was first to be measured again; absent: none was set. */
    readonly remeasure?: number;
  }[];
  readonly corrections: readonly {
    readonly session: number;
    readonly swing: number;
    readonly fundamentalId: FundamentalId;
    /** The wrong text that was entered. */
    readonly typed: string;
    /** Days since the season's first on which it was put right. */
    readonly mendedOn: number;
    readonly why: string;
  }[];
  readonly expected: readonly Expectation[];
}

/** A phone set up anew and checked square. */
export const SQUARE: CameraPlan = {
  placement: "anew",
  placementLabel: null,
  squareness: "square",
  offBy: null,
  trueYaw: null,
  setAsideReason: null,
};

/** A phone of which nobody knows how it stood. */
export const UNKNOWN: CameraPlan = { ...SQUARE, placement: "unknown", squareness: "unknown" };

/** A plain session with both views filmed square; `day` and `swings` as given. */
export function plainSession(day: number, swings: number): SessionPlan {
  return {
    day,
    swings,
    circumstance: "unaided",
    aid: null,
    reader: DEMO_READER,
    daysSincePractice: null,
    marks: [],
    note: null,
    swingNotes: {},
    stanceWidthCm: null,
    balls: null,
    solidShare: 0.5,
    cameras: { "face-on": SQUARE, "down-the-line": SQUARE },
  };
}

/** A track that a story is told with: read at every session. */
export function storyTrack(fundamentalId: FundamentalId, path: LevelPath): TrackPlan {
  return { fundamentalId, path, aidedLevel: null, missed: 0, notMeasurable: 0.01 };
}

/** A track beside the story: flat, now and then missed. */
export function sideTrack(fundamentalId: FundamentalId, level: number): TrackPlan {
  return { fundamentalId, path: { kind: "flat", level }, aidedLevel: null, missed: 0.08, notMeasurable: 0.02 };
}

/** Sessions at given days and swing counts, with some of them changed by position. */
export function sessionsAt(
  days: readonly number[],
  swings: readonly number[],
  changed: Readonly<Record<number, Partial<SessionPlan>>>,
): SessionPlan[] {
  return days.map((day, i) => ({ ...plainSession(day, swings[i % swings.length] as number), ...changed[i] }));
}
