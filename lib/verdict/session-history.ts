import type { CaptureReason } from "@/lib/capture/effect";
import type { ClubGroup } from "@/lib/domain/club-group";
import type { Fundamental, View } from "@/lib/domain/fundamental";
import type { GoalBand } from "@/lib/domain/goal-band";
import type { JudgedTrack } from "@/lib/domain/judged-track";
import type { Session } from "@/lib/domain/session";
import type { Fingerprint } from "./camera-fingerprint";

/** Why a session stands apart from the judged ones; null: it is judged. */
export type ApartReason =
  | { readonly kind: "circumstance"; readonly circumstance: "aid-in-view" | "in-lesson"; readonly aid: string | null }
  | { readonly kind: "set-aside"; readonly reason: string }
  | { readonly kind: "camera"; readonly why: CaptureReason; readonly offBy: number | null }
  | { readonly kind: "fingerprint"; readonly offBy: number; readonly view: View }
  | { readonly kind: "before"; readonly begins: string };

/** A finding about the phone, and what it did to one fundamental's session. */
export interface SessionFingerprint extends Fingerprint {
  /** Doubt widened by the estimated shift; set aside beyond what a film can bear; or left as it was. */
  readonly done: "widened" | "set-aside" | "nothing";
  /** How far the phone seems to have moved the fundamental, in its unit, whichever way. */
  readonly shift: number;
}

/** One session of a track with what the verdict needs and what a page draws. */
export interface HistorySession {
  readonly session: Session;
  /** In the order of the swings, in the fundamental's unit: as read, and with what the phone's place did taken out. */
  readonly swings: readonly { readonly number: number; readonly value: number; readonly read: number }[];
  readonly captureSd: number;
  readonly captureWhy: CaptureReason;
  /** Who placed the phone of the fundamental's view; null: not said. */
  readonly placedBy: string | null;
  /** What was taken out of the middle reading for the phone's place, in the unit; 0: nothing. */
  readonly takenOut: number;
  /** Position in the judged track; null: earlier than it begins. */
  readonly index: number | null;
  readonly apart: ApartReason | null;
  /** What the session's fundamentals together say of the phone, with what was done about it here; null: nothing. */
  readonly fingerprint: SessionFingerprint | null;
}

/** One track as it is on file: the judged input, and the sessions behind it. */
export interface TrackHistory {
  readonly studentId: string;
  readonly fundamental: Fundamental;
  readonly clubGroup: ClubGroup;
  /** The day on which the track begins anew; null: with its first session. */
  readonly begins: string | null;
  readonly goal: GoalBand;
  /** Every goal that was in force on the way, oldest first, each from its first day. */
  readonly goals: readonly GoalBand[];
  readonly sessions: readonly HistorySession[];
  readonly judged: JudgedTrack;
  /** Sessions before the season's start, judged for the level that they left; null: none, or a new beginning that forgets them. */
  readonly earlier: JudgedTrack | null;
}
