import type { CameraShift } from "./camera-shift";

/** Why a session's camera sd is what it is, or why the session doesn't count. */
export type CaptureReason =
  | "stated"
  | "unknown"
  | "square"
  | "off-widened"
  | "set-aside"
  | "sighted"
  | "corrected"
  | "yaw-too-large"
  | "offset-too-large"
  | "pitch-too-large"
  | "too-near"
  | "no-stick"
  | "too-slow";

/** What a camera record does to one fundamental of its session. */
export interface CaptureEffect {
  /** False: set aside before judging. */
  readonly use: boolean;
  /** Sd of the camera error shared by the session's swings, in the fundamental's unit; more than 0 unless stated so. */
  readonly captureSd: number;
  readonly why: CaptureReason;
  /** How far off the record has the phone: degrees of yaw face-on, cm beside the line down the line; null: it doesn't say. */
  readonly offBy: number | null;
  /** What a reading would be with the phone in its place, and how far its middle one is off; null: nothing is taken out. */
  readonly correction: { readonly shift: number; readonly truthOf: NonNullable<CameraShift["truthOf"]> } | null;
}
