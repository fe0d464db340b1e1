import { isCalendarDay } from "@/lib/domain/calendar-day";
import { type FormOutcome, fieldText } from "./field-issue";
import { collectIssues } from "./form-fields";

/**
 * The day on which a student left; an empty field says that the student is here.
 *
 * @param today `YYYY-MM-DD`; a later day is refused, because nobody knows yet
 */
export function parseDepartureForm(
  data: FormData,
  { today, birthYear }: { readonly today: string; readonly birthYear: number | null },
): FormOutcome<{ readonly departedOn: string | null }> {
  const { issues, add } = collectIssues();
  const day = fieldText(data, "departedOn");
  if (day !== "" && !isCalendarDay(day)) add("departedOn", "not-a-date");
  else if (day > today) add("departedOn", "future-date", { today });
  else if (day !== "" && birthYear !== null && Number(day.slice(0, 4)) < birthYear)
    add("departedOn", "before-birth", { year: birthYear });
  if (issues.length > 0) return { kind: "issues", issues };
  return { kind: "ok", value: { departedOn: day === "" ? null : day } };
}
