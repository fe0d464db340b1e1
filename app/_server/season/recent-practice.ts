import type { FiledAssignment } from "@/db/read/drills";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import type { DrillPractice } from "@/lib/domain/drill-practice";
import type { Practice } from "@/lib/domain/practice";
import { type Stopping, stoppedDays } from "@/lib/domain/stopped-days";
import type { PlateauPractice } from "@/lib/verdict/plateau";
import { PLATEAU_THRESHOLDS } from "@/lib/verdict/plateau-thresholds";

const WEEK = 7;

/** Days on which practice was logged from a day on. */
export function daysOf(practice: readonly Practice[], from: string): readonly string[] {
  return [...new Set(practice.flatMap(({ day }) => (day >= from ? [day] : [])))];
}

/** What the practice of the last weeks is counted from. */
export interface PracticeFacts {
  readonly practice: readonly Practice[];
  readonly drills: readonly FiledAssignment[];
  readonly events: readonly Stopping[];
  readonly count: (given: FiledAssignment, since: string) => DrillPractice | null;
  readonly today: string;
}

/** Days on which practice of one drill was logged while it was asked for, as what was asked for is counted. */
function daysOfDrill(practice: readonly Practice[], { id, start, end }: FiledAssignment, from: string) {
  const own = practice.filter(({ assignmentId, day }) => assignmentId === id && (end === null || day <= end));
  return daysOf(own, from > start ? from : start);
}

/**
 * Practice of the weeks after which standing still is spoken of: of the drills for a fundamental, where it was said how many
 * days a week were asked for, each drill by itself; else every day on which any was logged.
 */
export function recentPractice(
  { practice, drills, events, count, today }: PracticeFacts,
  fundamentalId: string,
): PlateauPractice {
  const from = dayFromNumber(dayNumber(today) - PLATEAU_THRESHOLDS.plateauWeeks.value * WEEK + 1);
  const mine = drills.filter(
    (given) =>
      given.fundamentalId === fundamentalId &&
      given.daysAWeek !== null &&
      given.start <= today &&
      (given.end ?? today) >= from,
  );
  const stopped = stoppedDays(events, dayNumber(from), dayNumber(today)).size;
  if (mine.length === 0) return { logged: [daysOf(practice, from)], asked: null, stopped };
  return {
    logged: mine.map((given) => daysOfDrill(practice, given, from)),
    asked: mine.reduce((sum, given) => sum + (count(given, from)?.asked ?? 0), 0),
    stopped,
  };
}
