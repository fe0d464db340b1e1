import type { Words } from "./catalogue";
import { sayDay } from "./day-words";

/**
 * The hour of an instant where a zone is, by 24 hours: “14:05”; of another day than today with its day: “24 Nov, 14:05”.
 *
 * @param instant ISO, in UTC
 * @param today the day to which no day need be said, `YYYY-MM-DD`
 */
export function sayHour(words: Words, instant: string, zone: string, today: string): string {
  const parts = new Intl.DateTimeFormat("en-GB", {
    timeZone: zone,
    calendar: "gregory",
    numberingSystem: "latn",
    year: "numeric",
    month: "2-digit",
    day: "2-digit",
    hour: "2-digit",
    minute: "2-digit",
    hourCycle: "h23",
  }).formatToParts(new Date(instant));
  const part = (type: string): string => parts.find((each) => each.type === type)?.value ?? "";
  const hour = `${part("hour")}:${part("minute")}`;
  const day = `${part("year").padStart(4, "0")}-${part("month")}-${part("day")}`;
  return day === today ? hour : words.say("draft.day-and-hour", { day: sayDay(words, day, "short"), hour });
}
