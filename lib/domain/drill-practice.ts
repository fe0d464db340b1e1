import { dayFromNumber, dayNumber } from "./calendar-day";
import type { AssignmentRecord } from "./drill-record";
import { type Practice, practiceWeeks } from "./practice";
import { type Stopping, stoppedDays } from "./stopped-days";

/** Practice of one drill, asked and logged. What nobody logged isn't known: it may have been practised or not. */
export interface DrillPractice {
  /** First and last day that are counted. */
  readonly from: string;
  readonly to: string;
  /** Days from the one to the other, both counted. */
  readonly days: number;
  /** Of them: in a pause, for an injury or not; nothing is asked on them. */
  readonly stoppedDays: number;
  /** Of the others: kept free of practice before a film, so that it shows what stays. */
  readonly restDays: number;
  /** Days of practice asked for until now, whole; null: days a week weren't said. */
  readonly asked: number | null;
  /** Minutes asked for on those days; null: days a week or minutes a day weren't said. */
  readonly askedMinutes: number | null;
  /** Days on which practice of this drill is logged. */
  readonly practised: number;
  /** Null: no entry says any. */
  readonly minutes: number | null;
  readonly balls: number | null;
  /** The last of those days; null: nothing is logged. */
  readonly lastLogged: string | null;
  /** Other days of the stretch on which practice is logged that names no drill. */
  readonly unnamed: number;
}

/** What a drill's practice is counted for. */
export type CountedDrill = Pick<AssignmentRecord, "id" | "start" | "end" | "minutesADay" | "daysAWeek" | "remeasureOn">;

const WEEK = 7;

/** What a drill's practice is counted against. */
export interface PracticeContext {
  readonly today: string;
  /** Days on which it was to be measured again before the next one was set. */
  readonly remeasured: readonly string[];
  /** Days before a day of measuring that are kept free of practice. */
  readonly rest: number;
  /** Events of the student that stand. */
  readonly events: readonly Stopping[];
  /** The first day that is counted; absent: that of the drill. */
  readonly since?: string;
}

/** Days kept free before the days of measuring; one that comes too soon after the first day asks for no rest. */
function restDays({ start, remeasureOn }: CountedDrill, earlier: readonly string[], rest: number): ReadonlySet<number> {
  const free = new Set<number>();
  for (const day of [...earlier, ...(remeasureOn === null ? [] : [remeasureOn])].map(dayNumber)) {
    if (day - rest <= dayNumber(start)) continue;
    for (let at = day - rest; at < day; at++) free.add(at);
  }
  return free;
}

/**
 * Practice of one given drill, asked and logged, from its first day to its last or to today. Days of a pause ask for none.
 *
 * @param practice of the student, in any order; what was taken back counts for nothing
 * @returns null: it has not begun, or ended before the first day that is counted
 */
export function drillPractice(
  given: CountedDrill,
  practice: readonly Practice[],
  context: PracticeContext,
): DrillPractice | null {
  const to = given.end !== null && given.end < context.today ? given.end : context.today;
  const from = context.since !== undefined && context.since > given.start ? context.since : given.start;
  const [first, last] = [dayNumber(from), dayNumber(to)];
  if (last < first) return null;
  const days = last - first + 1;
  const stopped = stoppedDays(context.events, first, last);
  const free = restDays(given, context.remeasured, context.rest);
  const rested = [...free].filter((day) => day >= first && day <= last && !stopped.has(day)).length;
  const within = practice.filter(({ voidedAt, day }) => voidedAt === null && day >= from && day <= to);
  const own = within.filter(({ assignmentId }) => assignmentId === given.id);
  const ownDays = new Set(own.map(({ day }) => day));
  const weeks = practiceWeeks(own);
  const sum = (counted: "minutes" | "balls"): number | null => {
    const known = weeks.flatMap((week) => (week[counted] === null ? [] : [week[counted]]));
    return known.length === 0 ? null : known.reduce((total, each) => total + each, 0);
  };
  const asked = given.daysAWeek === null ? null : Math.round((given.daysAWeek * (days - stopped.size - rested)) / WEEK);
  return {
    from,
    to: dayFromNumber(last),
    days,
    stoppedDays: stopped.size,
    restDays: rested,
    asked,
    askedMinutes: asked === null || given.minutesADay === null ? null : asked * given.minutesADay,
    practised: ownDays.size,
    minutes: sum("minutes"),
    balls: sum("balls"),
    lastLogged: [...ownDays].sort().at(-1) ?? null,
    unnamed: new Set(within.flatMap((each) => (each.assignmentId === null && !ownDays.has(each.day) ? [each.day] : [])))
      .size,
  };
}
