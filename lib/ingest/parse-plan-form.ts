import { dayFromNumber, dayNumber, isCalendarDay } from "@/lib/domain/calendar-day";
import { MOST_PLANNED } from "@/lib/domain/film-plan";
import { type FormOutcome, fieldText } from "./field-issue";
import { type Collect, collectIssues, count, ticked } from "./form-fields";

/** The plan of a film as a form says it. */
export interface EnteredPlan {
  readonly fundamentals: readonly string[];
  readonly swings: number;
  readonly dueOn: string;
}

/** A promise for longer than a year is a slip of the finger. */
const FARTHEST_DAYS = 366;

function readDue(data: FormData, today: string, add: Collect): string | null {
  const day = fieldText(data, "dueOn");
  if (!isCalendarDay(day)) return add("dueOn", "not-a-date");
  const latest = dayFromNumber(dayNumber(today) + FARTHEST_DAYS);
  if (day < today) return add("dueOn", "plan-past", { today });
  return day > latest ? add("dueOn", "plan-far", { latest }) : day;
}

/**
 * The form of a student's next film.
 *
 * @param context.today a promise for an earlier day is refused
 * @param context.offered ids of the fundamentals that may be ticked, in the order of work
 */
export function parsePlanForm(
  data: FormData,
  context: { readonly today: string; readonly offered: readonly string[] },
): FormOutcome<EnteredPlan> {
  const { issues, add } = collectIssues();
  const fundamentals = ticked(data, "fundamentals", context.offered, add);
  if (fundamentals.length === 0) add("fundamentals", "plan-none");
  if (fundamentals.length > MOST_PLANNED.fundamentals)
    add("fundamentals", "plan-many", { most: MOST_PLANNED.fundamentals });
  const swings = count(data, "swings", MOST_PLANNED.swings, add);
  if ((swings === null || swings === 0) && issues.every(({ field }) => field !== "swings"))
    add("swings", "not-a-count", { low: 1, high: MOST_PLANNED.swings });
  const dueOn = readDue(data, context.today, add);
  if (issues.length > 0 || swings === null || dueOn === null) return { kind: "issues", issues };
  return { kind: "ok", value: { fundamentals, swings, dueOn } };
}
