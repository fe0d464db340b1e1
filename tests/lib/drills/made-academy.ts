import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import type { ComparedDrill, ComparedTrack, WaitingStretch } from "@/lib/domain/compared-track";

const FIRST = dayNumber("2026-01-05");

/** The day of the nth session of a made track: one a week. */
export function dayOf(session: number): string {
  return dayFromNumber(FIRST + 7 * session);
}

/** A track with one session a week, of one swing each, in degrees; more is better. */
export function madeCompared(
  student: string,
  values: readonly number[],
  given: Partial<ComparedTrack> & {
    readonly drills?: readonly ComparedDrill[];
    readonly waiting?: readonly WaitingStretch[];
  } = {},
): ComparedTrack {
  return {
    id: student,
    student,
    coach: "c1",
    unit: "deg",
    better: "up",
    sessions: values.map((value, at) => ({ date: dayOf(at), captureSd: 0, swings: [value] })),
    drills: [],
    ...given,
  };
}
