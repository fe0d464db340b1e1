import { dayFromNumber, dayNumber } from "./calendar-day";

/** How practice felt, in a word. */
export const FELT = ["easy", "hard"] as const;

/** Who says that there was practice: seen by the coach, or told by the family. */
export const PRACTICE_SOURCES = ["told", "coach"] as const;

/** Practice of one day, as it was logged. At least one of minutes and balls is known. */
export interface Practice {
  readonly id: string;
  readonly day: string;
  /** The drill as it was given; null: practice without one. */
  readonly assignmentId: string | null;
  readonly minutes: number | null;
  readonly balls: number | null;
  readonly felt: (typeof FELT)[number] | null;
  /** `family`: logged on the page that a link opens. */
  readonly source: (typeof PRACTICE_SOURCES)[number] | "family";
  readonly who: string;
  /** ISO instant. */
  readonly recordedAt: string;
  /** Null: it stands. */
  readonly voidedAt: string | null;
}

/** That something hurt on a day, as the family said it; only they and the coach in charge are told. */
export interface SaidPain {
  /** Of the entry of practice with which it was said. */
  readonly id: string;
  readonly day: string;
  /** A word of the list of places, or the family's own. */
  readonly place: string;
  readonly who: string;
  /** ISO instant. */
  readonly recordedAt: string;
}

/** Practice of one calendar week, of what stands alone. */
export interface PracticeWeek {
  /** Its Monday. */
  readonly monday: string;
  /** Null: no entry of the week says any. */
  readonly minutes: number | null;
  readonly balls: number | null;
  /** Days with practice. */
  readonly days: number;
  /** Of them, days on which the family says something of it: told to the coach, or written down on its own page. */
  readonly toldDays: number;
  /** Of them, days on which some of it felt hard. */
  readonly hardDays: number;
}

/** The Monday of a day's week. Day 0, 1 January 1970, was a Thursday. */
export function mondayOf(day: string): string {
  const number = dayNumber(day);
  return dayFromNumber(number - ((((number + 3) % 7) + 7) % 7));
}

/** A sum in which what isn't known is left out; null where nothing is known. */
function known(values: readonly (number | null)[]): number | null {
  const given = values.filter((value) => value !== null);
  return given.length === 0 ? null : given.reduce((sum, value) => sum + value, 0);
}

function daysOf(entries: readonly Practice[]): number {
  return new Set(entries.map((entry) => entry.day)).size;
}

/** Weeks with practice that stands, oldest first; weeks without any are left out. */
export function practiceWeeks(entries: readonly Practice[]): readonly PracticeWeek[] {
  const weeks = new Map<string, Practice[]>();
  for (const entry of entries.filter((each) => each.voidedAt === null)) {
    const monday = mondayOf(entry.day);
    weeks.set(monday, [...(weeks.get(monday) ?? []), entry]);
  }
  return [...weeks]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([monday, own]) => ({
      monday,
      minutes: known(own.map((entry) => entry.minutes)),
      balls: known(own.map((entry) => entry.balls)),
      days: daysOf(own),
      toldDays: daysOf(own.filter((entry) => entry.source !== "coach")),
      hardDays: daysOf(own.filter((entry) => entry.felt === "hard")),
    }));
}
