import { dayFromNumber, dayNumber, isCalendarDay } from "@/lib/domain/calendar-day";
import { type FormOutcome, fieldText } from "./field-issue";
import { type Collect, choice, collectIssues, freeText } from "./form-fields";

/** What a student can be given to another coach for. */
export const HANDING_KINDS = ["own", "cover"] as const;

/** A student given to another coach: for good, or while theirs is away. */
export interface Handing {
  readonly kind: (typeof HANDING_KINDS)[number];
  readonly coachId: string;
  /** The first day of the other coach. */
  readonly from: string;
  /** The last day of a cover; null: for good. */
  readonly until: string | null;
  /** What the one who hands over wants the other to know; empty: nothing. */
  readonly note: string;
}

/** The longest note to the other coach, in characters: what needs more is better said. */
export const LONGEST_HANDING_NOTE = 600;

/** Further ahead, in days, nobody plans who has whom; a typed year that is wrong is caught by it. */
export const FURTHEST_HANDING_DAYS = 366;

function readDay(
  data: FormData,
  name: "from" | "until",
  { today, standing }: { readonly today: string; readonly standing: string },
  add: Collect,
): string | null {
  const day = fieldText(data, name) || standing;
  if (!isCalendarDay(day)) return add(name, day === "" ? "missing" : "not-a-date");
  if (day < today) return add(name, "past-day", { today });
  const latest = dayFromNumber(dayNumber(today) + FURTHEST_HANDING_DAYS);
  return day > latest ? add(name, "too-far-ahead", { latest }) : day;
}

function readUntil(
  data: FormData,
  kind: Handing["kind"],
  days: { readonly today: string; readonly from: string | null },
  add: Collect,
): string | null {
  if (kind === "own") return fieldText(data, "until") === "" ? null : add("until", "until-of-cover");
  const until = readDay(data, "until", { today: days.today, standing: "" }, add);
  return until !== null && days.from !== null && until < days.from ? add("until", "ends-before") : until;
}

/**
 * A form that gives a student to another coach. Access can't be given or taken for days that are over, so no day lies before
 * today; an empty first day is today.
 *
 * @param context.today the academy's day
 * @param context.coaches ids of those to whom the student may be given
 */
export function parseHandingForm(
  data: FormData,
  context: { readonly today: string; readonly coaches: readonly string[] },
): FormOutcome<Handing> {
  const { issues, add } = collectIssues();
  const { today, coaches } = context;
  const kind = choice(data, "kind", HANDING_KINDS, "own", add);
  const coachId = fieldText(data, "coach");
  if (!coaches.includes(coachId)) add("coach", coachId === "" ? "missing" : "not-a-choice");
  const from = readDay(data, "from", { today, standing: today }, add);
  const until = readUntil(data, kind, { today, from }, add);
  const note = freeText(data, "note", LONGEST_HANDING_NOTE, add) ?? "";
  if (issues.length > 0 || from === null) return { kind: "issues", issues };
  return { kind: "ok", value: { kind, coachId, from, until, note } };
}
