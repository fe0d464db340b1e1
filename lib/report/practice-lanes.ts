import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { type Practice, type PracticeWeek, practiceWeeks } from "@/lib/domain/practice";
import type { Words } from "@/lib/words/catalogue";
import { sayStretch } from "@/lib/words/day-words";
import type { TableModel } from "./basic-model";
import type { ChartPractice, PracticeLane } from "./chart-model";

const WEEK = 7;

function sayWeek(words: Words, { monday }: PracticeWeek): string {
  return sayStretch(words, monday, dayFromNumber(dayNumber(monday) + WEEK - 1));
}

function lane(
  words: Words,
  weeks: readonly PracticeWeek[],
  counted: "minutes" | "balls",
  days: { readonly first: number; readonly last: number },
): PracticeLane[] {
  const filled = weeks.flatMap((week) => {
    const sum = week[counted];
    return sum === null ? [] : [{ week, sum }];
  });
  const most = Math.max(0, ...filled.map(({ sum }) => sum));
  if (most === 0) return [];
  return [
    {
      label: words.say(`practice.lane.${counted}`, { most }),
      bars: filled.map(({ week, sum }) => ({
        from: Math.max(days.first, dayNumber(week.monday)),
        to: Math.min(days.last + 1, dayNumber(week.monday) + WEEK),
        share: sum / most,
        label: words.say(`practice.bar.${counted}`, {
          ...{ week: sayWeek(words, week), sum, days: week.days },
          ...{ told: week.toldDays, hard: week.hardDays },
        }),
      })),
    },
  ];
}

/**
 * Practice under a time axis, a bar a calendar week: minutes and balls each in a lane of its own, since a ball is no
 * minute. Sums alone, nothing judged.
 *
 * @param days first and last day drawn; a week that reaches in is drawn with its whole sum
 * @returns null where nothing was practised in that time
 */
export function practiceLanes(
  words: Words,
  entries: readonly Practice[],
  days: { readonly first: string; readonly last: string },
): ChartPractice | null {
  const bounds = { first: dayNumber(days.first), last: dayNumber(days.last) };
  const weeks = practiceWeeks(entries).filter(
    ({ monday }) => dayNumber(monday) <= bounds.last && dayNumber(monday) + WEEK > bounds.first,
  );
  const lanes = [...lane(words, weeks, "minutes", bounds), ...lane(words, weeks, "balls", bounds)];
  if (lanes.length === 0) return null;
  const total = (counted: Exclude<keyof PracticeWeek, "monday">): number =>
    weeks.reduce((sum, week) => sum + (week[counted] ?? 0), 0);
  return {
    lanes,
    summary: words.say("practice.summary", {
      weeks: weeks.length,
      ...{ days: total("days"), told: total("toldDays"), hard: total("hardDays") },
      ...{ minutes: total("minutes"), balls: total("balls") },
    }),
    table: weekTable(words, weeks),
  };
}

/** Weeks with practice, latest first. */
export function weekTable(words: Words, weeks: readonly PracticeWeek[]): TableModel {
  return {
    caption: words.say("practice.weeks.caption"),
    columns: [
      { label: words.say("practice.week"), align: "start" },
      { label: words.say("practice.minutes"), align: "end" },
      { label: words.say("practice.balls"), align: "end" },
      { label: words.say("practice.days"), align: "end" },
      { label: words.say("practice.told-days"), align: "end" },
      { label: words.say("practice.hard-days"), align: "end" },
    ],
    rows: [...weeks].reverse().map((week) => ({
      cells: [
        sayWeek(words, week),
        week.minutes === null ? "" : String(week.minutes),
        week.balls === null ? "" : String(week.balls),
        ...[week.days, week.toldDays, week.hardDays].map(String),
      ],
      tone: "plain" as const,
    })),
  };
}
