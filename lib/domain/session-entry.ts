import type { CalendarDay } from "./calendar-day";
import type { ClubGroup } from "./club-group";
import type { FundamentalId, View } from "./fundamental";
import type { SignRule } from "./handedness";
import type { CaptureSightings, Circumstance, Placement, Squareness } from "./session";

/** One value as it comes in, checked: neutral sign, the fundamental's unit. */
export interface EnteredReading {
  readonly fundamentalId: FundamentalId;
  /** Null: not measurable. */
  readonly value: number | null;
  /** As typed, character by character. */
  readonly typed: string;
  readonly unit: string;
  readonly signRule: SignRule;
}

/** One swing as it comes in. */
export interface EnteredSwing {
  readonly number: number;
  readonly note: string | null;
  readonly readings: readonly EnteredReading[];
}

/** One view's camera record as it comes in. */
export interface EnteredCapture {
  readonly view: View;
  readonly placement: Placement;
  readonly placementLabel: string | null;
  readonly squareness: Squareness;
  readonly offBy: number | null;
  readonly seen: CaptureSightings;
  readonly placedBy: string | null;
  readonly setAsideReason: string | null;
  readonly filmReference: string | null;
}

/** One session as it comes in from a form or a file, checked and ready to be written. */
export interface EnteredSession {
  readonly day: CalendarDay;
  /** Null: the next free place among the day's sessions. */
  readonly sequence: number | null;
  /** The group that was said; the one that it is judged in follows from it, the club and the academy's groups. */
  readonly clubGroup: ClubGroup;
  readonly club: string | null;
  readonly reader: string;
  readonly circumstance: Circumstance;
  readonly aid: string | null;
  readonly stanceWidthCm: number | null;
  readonly daysSincePractice: number | null;
  readonly marks: readonly string[];
  readonly note: string | null;
  readonly solid: number | null;
  readonly balls: number | null;
  readonly setAsideReason: string | null;
  readonly captures: readonly EnteredCapture[];
  readonly statedCaptureSds: readonly { readonly fundamentalId: FundamentalId; readonly sd: number }[];
  readonly swings: readonly EnteredSwing[];
  /** Filmed together with others on one occasion; absent: alone. */
  readonly groupId?: string;
}

/** What an import will write, all of it or nothing. */
export interface ImportPlan {
  readonly fileName: string;
  readonly contentHash: string;
  readonly form: "long" | "wide";
  readonly rows: number;
  /** Students to be added first, with who confirmed consent on paper. */
  readonly newStudents: readonly {
    readonly alias: string;
    readonly hand: "right" | "left";
    readonly birthYear: number | null;
    readonly consentGivenBy: string;
  }[];
  /** Whom an alias means that several students bear; absent: none is. */
  readonly whose?: readonly { readonly alias: string; readonly studentId: string }[];
  /** Sessions by the alias of their student; readings of a session that is on file are added to it. */
  readonly sessions: readonly { readonly alias: string; readonly session: EnteredSession }[];
  /** Every value that was changed, guessed or set aside, by row and field; JSON, kept with the batch. */
  readonly answers: string;
}
