import { FELT, PRACTICE_SOURCES, type Practice } from "@/lib/domain/practice";
import { type FormOutcome, fieldText } from "./field-issue";
import { choice, collectIssues, count } from "./form-fields";

/** More minutes of practice in one day are asked about. 5 hours: nobody's dose in this trade is near it (common practice, no source). */
export const ASKED_MINUTES = 300;
/** More balls in one day are asked about. Ten times a usual dose of 20 reps and up to 80 balls (common practice, no source). */
export const ASKED_BALLS = 1000;
/** Minutes in a day: more can't be. */
const MOST_MINUTES = 1440;
/** At one ball every 10 seconds for 14 hours: more is a slip of the finger. */
const MOST_BALLS = 5000;

/** Practice of one day as a form gives it. */
export type EnteredPractice = Pick<Practice, "day" | "assignmentId" | "minutes" | "balls" | "felt" | "source">;

/** What a form of practice is read against. */
export interface PracticeContext {
  /** Days that the form shows, none of them after today. */
  readonly days: readonly string[];
  /** Drills given to the student, with their days. */
  readonly drills: readonly { readonly id: string; readonly start: string; readonly end: string | null }[];
  /** What stands of each day already, so that a day's sum is asked about. */
  readonly onFile: ReadonlyMap<string, { readonly minutes: number; readonly balls: number }>;
}

/**
 * A form of practice: fields `minutes.<day>` and `balls.<day>`, most of them empty, and what holds of all of them. A
 * day's sum beyond what is likely is asked about and taken when it is confirmed.
 */
export function parsePracticeForm(
  data: FormData,
  { days, drills, onFile }: PracticeContext,
): FormOutcome<readonly EnteredPractice[]> {
  const { issues, add } = collectIssues();
  const drillId = fieldText(data, "drill");
  const drill = drills.find((each) => each.id === drillId) ?? null;
  if (drillId !== "" && drill === null) add("drill", "not-a-choice");
  const felt = fieldText(data, "felt") === "" ? null : choice(data, "felt", FELT, "easy", add);
  const source = choice(data, "source", PRACTICE_SOURCES, "told", add);
  const sure = fieldText(data, "confirmMuch") === "yes";
  const entries = days.flatMap((day): EnteredPractice[] => {
    const minutes = count(data, `minutes.${day}`, MOST_MINUTES, add);
    const balls = count(data, `balls.${day}`, MOST_BALLS, add);
    for (const [name, value] of Object.entries({ minutes, balls }))
      if (value === 0) add(`${name}.${day}`, "practice-of-nothing");
    const before = onFile.get(day);
    if (!sure && minutes !== null && minutes + (before?.minutes ?? 0) > ASKED_MINUTES)
      add(`minutes.${day}`, "much-practice", { asked: ASKED_MINUTES });
    if (!sure && balls !== null && balls + (before?.balls ?? 0) > ASKED_BALLS)
      add(`balls.${day}`, "many-balls", { asked: ASKED_BALLS });
    if (minutes === null && balls === null) return [];
    if (drill !== null && (day < drill.start || (drill.end !== null && day > drill.end)))
      add("drill", "drill-not-on-then");
    return [{ day, assignmentId: drill?.id ?? null, minutes, balls, felt, source }];
  });
  if (issues.length === 0 && entries.length === 0) add(`minutes.${days.at(-1) ?? ""}`, "no-practice");
  return issues.length > 0 ? { kind: "issues", issues } : { kind: "ok", value: entries };
}
