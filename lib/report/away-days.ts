import { daysBetween } from "@/lib/domain/calendar-day";

/** After so many days without a film a level is of its day, not of now. Six weeks. */
export const AWAY_DAYS = 42;

/** Whether a track's last film is too long ago for what it says to be called current; without a film: not. */
export function isAway(lastDay: string | undefined, today: string): boolean {
  return lastDay !== undefined && daysBetween(lastDay, today) > AWAY_DAYS;
}
