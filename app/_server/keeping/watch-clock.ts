import { z } from "zod";
import { type Database, inTransaction } from "@/db/client";
import { readClockSeen } from "@/db/read/keeping";
import { readPreference } from "@/db/read/preferences";
import { updateClockSeen, updateNoticesPostponed } from "@/db/write/keeping";
import { deletePreference, insertPreference } from "@/db/write/preferences";
import { type CalendarDay, dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import type { AcademyScope } from "@/lib/domain/scope";
import { ERASING_THRESHOLDS } from "@/lib/verdict/erasing-thresholds";
import { currentInstant, dayIn } from "../clock";
import type { Viewer } from "../gate";
import { PROGRAM } from "./program";

const LEAP = "clock-leap";
const HOUR_MS = 3_600_000;

const leapSchema = z.object({ from: z.iso.datetime(), to: z.iso.datetime() });

/** A leap of the machine's clock that nobody has answered for: it last showed `from`, and then `to`. */
export type ClockLeap = z.infer<typeof leapSchema>;

type Here = Pick<Viewer, "db" | "scope">;
/** The academy of a database, also where nobody has been let in. */
type There = { readonly db: Database; readonly scope: Pick<AcademyScope, "academyId"> };

/** The leap that waits for somebody's word; null: none. */
export function findLeap({ db, scope }: There): ClockLeap | null {
  const kept = readPreference(db, scope, PROGRAM, LEAP);
  return kept === undefined ? null : leapSchema.parse(JSON.parse(kept));
}

function leaps(seen: string, now: string): boolean {
  return Math.abs(Date.parse(now) - Date.parse(seen)) > ERASING_THRESHOLDS.leapHours.value * HOUR_MS;
}

/** Whether nothing may go by the clock as it stands: it has leapt, or nobody has ever looked at it. */
export function isClockInDoubt(there: There): boolean {
  const seen = readClockSeen(there.db, there.scope);
  return seen === null || leaps(seen, currentInstant()) || findLeap(there) !== null;
}

/**
 * Looks at the clock and keeps the latest time that it has shown. A leap of more than two days, either way, stands until
 * somebody says that the day is right; meanwhile nothing is erased by the clock.
 */
export function watchClock({ db, scope }: Here): ClockLeap | null {
  const now = currentInstant();
  return inTransaction(db, () => {
    const seen = readClockSeen(db, scope);
    const standing = findLeap({ db, scope });
    if (seen === null || now > seen) updateClockSeen(db, scope, now);
    if (standing !== null || seen === null || !leaps(seen, now)) return standing;
    const leap = { from: seen, to: now };
    insertPreference(db, scope, { viewer: PROGRAM, name: LEAP, value: JSON.stringify(leap) });
    return leap;
  });
}

/** The first day on which what is announced on a day may go. */
export function firstDueDay(today: CalendarDay): CalendarDay {
  return dayFromNumber(dayNumber(today) + ERASING_THRESHOLDS.noticeDays.value);
}

/**
 * Takes somebody's word that the clock is right now. While the machine was off nobody could read what was announced, so that
 * all of it stands as long as if it were announced today.
 */
export function settleLeap({ db, scope, today }: Here & Pick<Viewer, "today">): void {
  inTransaction(db, () => {
    updateNoticesPostponed(db, scope, { day: firstDueDay(today), of: "all" });
    deletePreference(db, scope, PROGRAM, LEAP);
    updateClockSeen(db, scope, currentInstant());
  });
}

/**
 * The latest time that the clock has shown: what has ended by it stays ended, also when the clock goes back. Ask it wherever
 * something opens until an instant.
 */
export function latestInstant({ db, scope }: There): string {
  const now = currentInstant();
  const seen = readClockSeen(db, scope);
  return seen !== null && seen > now ? seen : now;
}

/** The academy's day at that time: what has lapsed by it stays lapsed. The demo's stands still. */
export function latestDay({ academy, ...there }: There & Pick<Viewer, "academy">): CalendarDay {
  return academy.fixedToday ?? dayIn(academy.zone, new Date(latestInstant(there)));
}
