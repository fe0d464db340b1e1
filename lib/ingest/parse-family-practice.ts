import { PAIN_PLACES, type PainPlace } from "@/lib/domain/student";
import { type FormOutcome, fieldText } from "./field-issue";
import { collectIssues } from "./form-fields";
import { type EnteredPractice, type PracticeContext, parsePracticeForm } from "./parse-practice-form";

/** What was practised on a day of the two that a family may write down. */
export type FamilyDay = Pick<EnteredPractice, "day" | "assignmentId" | "minutes" | "balls" | "felt">;

/** What a family says of one day. That something hurts stands apart: it is so whatever is wrong with the rest. */
export interface FamilyForm {
  /** Null: nothing hurts, or it isn't said. */
  readonly hurting: { readonly day: string; readonly place: PainPlace } | null;
  /** Null in it: nothing was practised, which only somebody says whom something hurts. */
  readonly practised: FormOutcome<FamilyDay | null>;
}

/** What is read as a coach's form is; its fields stand there under the name of a day. */
function asPracticeForm(data: FormData, day: string, drill: string): FormData {
  const form = new FormData();
  for (const count of ["minutes", "balls"]) form.set(`${count}.${day}`, fieldText(data, count));
  form.set("felt", fieldText(data, "felt"));
  form.set("drill", drill);
  return form;
}

// Where it hurts is a help, that it hurts is what stops the work: no place, or one that isn't on the list, refuses nothing.
function placeIn(data: FormData): PainPlace {
  return PAIN_PLACES.find((each) => each === fieldText(data, "place")) ?? "elsewhere";
}

/**
 * The form of a family's page: fields `day`, `minutes`, `balls`, `felt`, `hurts` (asked every time) and `place`. What was
 * practised is held against the same limits as what a coach logs; a sum beyond what is likely is refused, since nobody who could
 * confirm it reads along. A yes to `hurts` is read whatever else is wrong, on the first of the days where the day is.
 *
 * @param context days: today and yesterday
 * @param drillOn the drill in hand on a day; empty: none
 */
export function parseFamilyPractice(
  data: FormData,
  context: PracticeContext,
  drillOn: (day: string) => string,
): FamilyForm {
  const { issues, add } = collectIssues();
  const day = context.days.find((each) => each === fieldText(data, "day"));
  const on = day ?? context.days[0] ?? "";
  const hurts = fieldText(data, "hurts");
  const hurting = hurts === "yes" ? { day: on, place: placeIn(data) } : null;
  const nothing = ["minutes", "balls"].every((name) => fieldText(data, name) === "");
  if (hurting !== null && nothing) return { hurting, practised: { kind: "ok", value: null } };
  if (day === undefined) add("day", "not-a-choice");
  if (hurting === null && hurts !== "no") add("hurts", "hurts-missing");
  const read = parsePracticeForm(asPracticeForm(data, on, drillOn(on)), { ...context, days: [on] });
  if (read.kind === "issues")
    for (const { field, code, args } of read.issues) add(field.replace(`.${on}`, ""), code, args);
  if (issues.length > 0) return { hurting, practised: { kind: "issues", issues } };
  const entry = read.kind === "ok" ? read.value[0] : undefined;
  if (entry === undefined) return { hurting, practised: { kind: "ok", value: null } };
  const { assignmentId, minutes, balls, felt } = entry;
  return { hurting, practised: { kind: "ok", value: { day: on, assignmentId, minutes, balls, felt } } };
}
