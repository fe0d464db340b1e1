import { type CalendarDay, isCalendarDay } from "@/lib/domain/calendar-day";

/** The present instant. Nothing else in the program reads the clock. */
export function readClock(): Date {
  return new Date();
}

/** The present instant as it is kept: ISO, in UTC. */
export function currentInstant(): string {
  return readClock().toISOString();
}

/** Zones of which a calendar is held: a program meets few, but whoever writes a zone may write it in many ways. */
const HELD_ZONES = 100;

/** By zone: to make one is many times the work of asking it. */
const calendars = new Map<string, Intl.DateTimeFormat>();

function calendarOf(zone: string): Intl.DateTimeFormat {
  const known = calendars.get(zone);
  if (known) return known;
  const calendar = new Intl.DateTimeFormat("en", {
    timeZone: zone,
    calendar: "gregory",
    numberingSystem: "latn",
    year: "numeric",
    month: "2-digit",
    day: "2-digit",
  });
  if (calendars.size >= HELD_ZONES) calendars.clear();
  calendars.set(zone, calendar);
  return calendar;
}

/** The calendar day of an instant where the zone is. */
export function dayIn(zone: string, instant: Date): CalendarDay {
  const parts = calendarOf(zone).formatToParts(instant);
  const part = (type: string) => parts.find((each) => each.type === type)?.value ?? "";
  const day = `${part("year").padStart(4, "0")}-${part("month")}-${part("day")}`;
  if (!isCalendarDay(day)) throw new Error(`not a day: ${day}`);
  return day;
}

/** The calendar day of each instant as it is kept, where an academy is. */
export function daysHere({ zone }: { readonly zone: string }): (instant: string) => CalendarDay {
  return (instant) => dayIn(zone, new Date(instant));
}

/** The time of day of an instant where the zone is: “17:20”. */
export function timeIn(zone: string, instant: Date): string {
  return new Intl.DateTimeFormat("en-GB", { timeZone: zone, hour: "2-digit", minute: "2-digit" }).format(instant);
}

/** Day and time of day where the zone is, for many instants: making a format anew takes longer than the rest. */
export function dayAndTimeIn(zone: string): (instant: Date) => { readonly day: CalendarDay; readonly time: string } {
  const format = new Intl.DateTimeFormat("en-GB", {
    timeZone: zone,
    calendar: "gregory",
    numberingSystem: "latn",
    hourCycle: "h23",
    year: "numeric",
    month: "2-digit",
    day: "2-digit",
    hour: "2-digit",
    minute: "2-digit",
  });
  return (instant) => {
    const parts = new Map(format.formatToParts(instant).map(({ type, value }) => [type, value]));
    const part = (type: Intl.DateTimeFormatPartTypes): string => parts.get(type) ?? "";
    return {
      day: `${part("year").padStart(4, "0")}-${part("month")}-${part("day")}`,
      time: `${part("hour")}:${part("minute")}`,
    };
  };
}

/** An academy's today: the demo's stands still. */
export function todayOf(academy: { readonly fixedToday: string | null; readonly zone: string }): CalendarDay {
  return academy.fixedToday ?? dayIn(academy.zone, readClock());
}

/** The hour that an academy's records bear; the demo's today stands still, and ends in the evening. */
export function instantOf(academy: { readonly fixedToday: string | null }): string {
  return academy.fixedToday === null ? currentInstant() : `${academy.fixedToday}T20:00:00.000Z`;
}

/** The last instant of a calendar day where the zone is, as it is kept: whatever bears a later one came after that day. */
export function endOfDay(zone: string, day: CalendarDay): string {
  const midnight = Date.parse(`${day}T00:00:00.000Z`);
  const HOUR = 3_600_000;
  // No zone is more than 14 hours ahead or 12 behind, and no day longer than 25.
  let [inside, outside] = [midnight - 14 * HOUR, midnight + 38 * HOUR];
  while (outside - inside > 1) {
    const middle = Math.floor((inside + outside) / 2);
    if (dayIn(zone, new Date(middle)) <= day) inside = middle;
    else outside = middle;
  }
  return new Date(inside).toISOString();
}
