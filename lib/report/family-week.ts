import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { FAMILY_THRESHOLDS } from "@/lib/verdict/family-thresholds";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import type { FamilyLogSource, PracticeEntry } from "./family-log-source";
import type { FamilyPractice, FamilyWeekDay } from "./family-practice-model";
import type { FamilyPress } from "./family-press-model";

/** What was practised, in words. */
function sayEntry(words: Words, { minutes, balls, felt }: PracticeEntry): string {
  return [
    ...(minutes === null ? [] : [words.say("family.practice.minutes", { minutes })]),
    ...(balls === null ? [] : [words.say("family.practice.balls", { balls })]),
    ...(felt === null ? [] : [words.say(`family.practice.felt.${felt}`)]),
  ].join(", ");
}

function isPractice({ minutes, balls }: PracticeEntry): boolean {
  return minutes !== null || balls !== null;
}

function sum(own: readonly PracticeEntry[], counted: "minutes" | "balls"): number | null {
  const known = own.flatMap((entry) => entry[counted] ?? []);
  return known.length === 0 ? null : known.reduce((all, each) => all + each, 0);
}

/** The number that a cell has room for: minutes, and balls where no minutes are known. */
function cellOf(words: Words, own: readonly PracticeEntry[]): Pick<FamilyWeekDay, "said" | "unit"> {
  const [minutes, balls] = [sum(own, "minutes"), sum(own, "balls")];
  if (minutes !== null) return { said: String(minutes), unit: words.say("family.week.minutes") };
  if (balls !== null) return { said: String(balls), unit: words.say("family.week.balls", { balls }) };
  return { said: words.say("family.practice.nothing"), unit: "" };
}

function undoOf(words: Words, { alias, pageId }: FamilyLogSource, entry: PracticeEntry): FamilyPress {
  const said = { said: sayEntry(words, entry), day: sayDay(words, entry.day, "with-weekday") };
  return {
    label: words.say("family.practice.undo", { alias, ...said }),
    action: `/api/family/${pageId}/practice/back`,
    hidden: [{ name: "practiceId", value: entry.id }],
  };
}

function sayHeading(words: Words, days: number, { reader, daysAWeek }: FamilyLogSource): string {
  if (reader === "young") return words.say("family.practice.heading");
  // More than was asked for is no aim.
  return daysAWeek === null || days > daysAWeek
    ? words.say("family.week.heading", { days })
    : words.say("family.week.heading.asked", { days, asked: daysAWeek });
}

/** The last seven days as cells, today last, and what takes back what the family itself wrote down in them. */
export function familyWeek(
  words: Words,
  source: FamilyLogSource,
): Pick<FamilyPractice, "heading" | "week" | "undo" | "older"> {
  const { today, entries } = source;
  const last = dayNumber(today);
  const days = Array.from({ length: FAMILY_THRESHOLDS.logDays.value }, (_, back) => dayFromNumber(last - back));
  const byDay = days.map((day) => ({
    day,
    own: entries.filter((entry) => entry.day === day && isPractice(entry)),
  }));
  const practised = byDay.filter(({ own }) => own.length > 0).length;
  const undo = (from: number, to: number): FamilyPress[] =>
    byDay
      .slice(from, to)
      .flatMap(({ own }) =>
        own.filter(({ source: by }) => by === "family").map((entry) => undoOf(words, source, entry)),
      );
  const older = undo(2, days.length);
  return {
    heading: sayHeading(words, practised, source),
    week: byDay.toReversed().map(({ day, own }) => ({
      weekday: sayDay(words, day, "weekday"),
      ...cellOf(words, own),
      spoken: words.say("family.practice.day", {
        day: sayDay(words, day, "with-weekday"),
        said: own.map((entry) => sayEntry(words, entry)).join("; ") || words.say("family.practice.nothing"),
      }),
      when: day === today ? "today" : "before",
    })),
    undo: undo(0, 2),
    older: older.length === 0 ? null : { label: words.say("family.week.older"), undo: older },
  };
}
