import type { CalendarDay } from "./calendar-day";

/** The days of somebody's time in charge of a student. */
export interface ChargeDays {
  readonly fromDay: CalendarDay;
  /** The last day; null: until further notice. */
  readonly untilDay: CalendarDay | null;
  /** ISO instant at which it was ended by hand; null: it was not. */
  readonly endedAt: string | null;
}

/** How a charge stands on a day. */
export type ChargeStanding = "to-come" | "in-force" | "over";

/**
 * How a charge stands on a day: first and last day belong to it. One that ends before it begins was handed on within its
 * first day, and is in force on none.
 *
 * @param day the academy's day, by its own zone: a charge begins and ends at its midnight
 */
export function chargeOn({ fromDay, untilDay, endedAt }: ChargeDays, day: CalendarDay): ChargeStanding {
  if (endedAt !== null) return "over";
  if (untilDay !== null && (untilDay < day || untilDay < fromDay)) return "over";
  return fromDay > day ? "to-come" : "in-force";
}
