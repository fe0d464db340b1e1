import { daysBetween } from "@/lib/domain/calendar-day";
import type { BriefSource, BriefStudent } from "./brief-source";
import { pausing } from "./pausing";
import { stopped } from "./stopped";
import { whyBlocked } from "./why-blocked";

/** Films on different days before the first drill: a change right after a single one can hardly be proved. */
export const FILMS_BEFORE = 2;

/** Days of a week. */
const WEEK = 7;

/**
 * Students who stand at the beginning: fewer than two days of films. Whoever is away, pauses or whose work is stopped isn't
 * among them, nor whose latest films in a row don't count: what makes them count comes before more of them. That few films
 * count is no other matter, and isn't said of them besides.
 */
export function beginning(source: BriefSource): readonly BriefStudent[] {
  const pauses = pausing(source);
  const held = stopped(source);
  return source.students.filter((entry) => {
    const isAway = daysBetween(entry.lastDay ?? entry.since, source.today) > source.weeks * WEEK;
    const isOut = pauses.has(entry.student.id) || held.has(entry.student.id);
    if (entry.filmDays.length >= FILMS_BEFORE || isAway || isOut) return false;
    const why = whyBlocked(entry, source.today)?.kind;
    return why !== "set-aside" && why !== "aided";
  });
}
