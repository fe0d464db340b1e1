import { isCalendarDay } from "@/lib/domain/calendar-day";
import type { Fundamental, FundamentalId } from "@/lib/domain/fundamental";
import type { EventKind } from "@/lib/domain/student";
import { type FormOutcome, fieldText } from "./field-issue";
import { choice, collectIssues, freeText, ticked } from "./form-fields";
import { parseValue } from "./parse-value";

/** Events that a coach records; the others come from what the academy or its readers do. */
export const RECORDED_EVENTS = ["new-club", "growth", "break"] as const satisfies readonly EventKind[];

/** An event as a form gives it. */
export interface EnteredEvent {
  readonly kind: (typeof RECORDED_EVENTS)[number];
  readonly day: string;
  readonly note: string;
  /** Height on that day, cm; null: not measured. */
  readonly heightCm: number | null;
  readonly rebaselines: readonly FundamentalId[];
}

const SHORTEST_CM = 70;
const TALLEST_CM = 230;

/**
 * A form that records what happened to a student: new clubs, growth, a break.
 *
 * @param context.today the day where the student is; later days are refused
 */
export function parseEventForm(
  data: FormData,
  context: { readonly today: string; readonly fundamentals: readonly Fundamental[] },
): FormOutcome<EnteredEvent> {
  const { issues, add } = collectIssues();
  const kind = choice(data, "kind", RECORDED_EVENTS, "new-club", add);
  const day = fieldText(data, "day");
  if (!isCalendarDay(day)) add("day", "not-a-date");
  else if (day > context.today) add("day", "future-date", { today: context.today });
  const note = freeText(data, "note", 300, add) ?? "";
  const height = parseValue(fieldText(data, "heightCm"));
  const heightCm = height.kind === "number" ? height.value : null;
  if (height.kind !== "blank" && (heightCm === null || heightCm < SHORTEST_CM || heightCm > TALLEST_CM))
    add("heightCm", "not-a-height", { low: SHORTEST_CM, high: TALLEST_CM });
  const ids = context.fundamentals.map((fundamental) => fundamental.id);
  const rebaselines = ticked(data, "rebaselines", ids, add);
  if (issues.length > 0) return { kind: "issues", issues };
  return { kind: "ok", value: { kind, day, note, heightCm, rebaselines } };
}
