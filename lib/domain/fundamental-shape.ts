import type { CalendarDay } from "./calendar-day";
import type { ClubKind } from "./club-group";

/** Checkpoints of a swing from which stills are read, in the order of the swing. */
export const CHECKPOINTS = ["setup", "club-parallel", "lead-arm-parallel", "top", "impact"] as const;

/** A checkpoint of a swing. */
export type Checkpoint = (typeof CHECKPOINTS)[number];

/** Camera views. */
export const VIEWS = ["face-on", "down-the-line"] as const;

/** A camera view. */
export type View = (typeof VIEWS)[number];

/** Units of a fundamental: degrees; % of stance width; % of the way from chin to trail shoulder point. */
export const UNITS = ["deg", "pct-stance", "pct-span"] as const;

/** A unit of a fundamental. */
export type Unit = (typeof UNITS)[number];

/** Where a fundamental stands in the order of work. */
export const PHASES = ["before-swing", "in-swing", "impact"] as const;

/** Where a fundamental stands in the order of work. */
export type Phase = (typeof PHASES)[number];

/** An academy's own fundamental: `own-` and a slug. */
export type OwnId = `own-${string}`;

/** Edges of a goal or of what is plausible, in the fundamental's unit; null: no edge on that side. */
export interface Edges {
  readonly low: number | null;
  readonly high: number | null;
}

/**
 * How far a wrongly placed phone moves a reading.
 *
 * `yaw` and `roll` in the fundamental's unit per degree; `offset` per degree of the angle under which the phone's
 * sideways place is seen from the ball line. 0: this kind of misplacement leaves the reading alone.
 */
export interface CameraSensitivity {
  readonly yaw: number;
  readonly roll: number;
  readonly offset: number;
}

/** One measured fundamental: everything that behaviour hangs on. Nothing outside this folder asks for an id. */
export interface FundamentalShape<Id extends string> {
  readonly id: Id;
  /** A name typed by the academy; null for built-in ones, whose names are messages. */
  readonly ownName: string | null;
  readonly unit: Unit;
  readonly view: View;
  readonly checkpoint: Checkpoint;
  readonly phase: Phase;
  /** Place in the order of work; smaller comes first. */
  readonly order: number;
  /** Whether a mirrored picture turns the sign. */
  readonly mirrors: "mirrors" | "same";
  /** The two fundamentals whose difference (first minus second) it is, of the same swing; null: read from a still. */
  readonly derivedFrom: readonly [string, string] | null;
  /** Values beyond these are asked about, never dropped. */
  readonly plausible: { readonly low: number; readonly high: number };
  /** Built-in goal band by kind of clubs. */
  readonly goals: Readonly<Record<ClubKind, Edges>>;
  /** Sd of one reading, in the unit, until the reader's own is measured. */
  readonly readerSd: number;
  /** Sd of the camera error of a session whose phone placement is unknown, in the unit. */
  readonly cameraSdUnknown: number;
  readonly sensitivity: CameraSensitivity;
  /** Of the academy's own ones alone: how it is read off a still, and what plus means, as somebody typed it; absent: not said. */
  readonly ownHow?: string | undefined;
  readonly ownPlus?: string | undefined;
  /** The smallest change worth having, in the unit, as the academy says it; absent: it follows from the goal band. */
  readonly worthwhile?: number | undefined;
  /** First day on which it isn't read any more; null or absent: it is read. */
  readonly retiredOn?: CalendarDay | null | undefined;
  /** How it was defined before, oldest first; absent: it has not changed. */
  readonly earlier?: readonly EarlierDefinition[] | undefined;
}

/** What of a fundamental says how sure a reading is and what a change is worth: it holds for films from a day on. */
export interface Measuring {
  readonly readerSd: number;
  readonly cameraSdUnknown: number;
  readonly sensitivity: CameraSensitivity;
  readonly worthwhile?: number | undefined;
}

/** How an academy's own fundamental was defined before, and who changed it why. */
export type EarlierDefinition = Measuring &
  Omit<FundamentalShape<OwnId>, "id" | "earlier" | "derivedFrom"> & {
    /** The day from which the next definition holds; `SINCE_EVER`: nothing was read by this one. */
    readonly until: CalendarDay;
    readonly who: string;
    readonly why: string;
    /** ISO instant. */
    readonly changedAt: string;
  };

/** The name of a fundamental as an id: `own-` + slug for the academy's own ones. */
export function isOwnId(id: string): id is OwnId {
  return id.startsWith("own-") && id.length > 4;
}
