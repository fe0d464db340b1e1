import { isCalendarDay } from "@/lib/domain/calendar-day";
import type { DatedOwningRule } from "@/lib/domain/owning-rule";
import { type FormOutcome, fieldText } from "./field-issue";
import { type Collect, collectIssues, count, neededText } from "./form-fields";

/** Least and largest whole number of each part of a rule; shares in hundredths. */
export type OwningBounds = Readonly<
  Record<"sessions" | "spanDays" | "restDays" | "share" | "shareLow", readonly [low: number, high: number]>
>;

/** What a form is read against. */
export interface OwningContext {
  readonly bounds: OwningBounds;
  /** Today: one that is planned for a later day may be replaced. */
  readonly earliest: string;
  /** The last day for which a rule may be planned. */
  readonly latest: string;
  /** What holds on the day asked for: the same again is no new rule. Null: the same too replaces one that is planned. */
  readonly standing: Omit<DatedOwningRule, "from"> | null;
}

const LONGEST = 300;

function readPart(data: FormData, name: keyof OwningBounds, bounds: OwningBounds, add: Collect): number {
  const [low, high] = bounds[name];
  if (fieldText(data, name) === "") {
    add(name, "missing");
    return 0;
  }
  const value = count(data, name, high, (field) => add(field, "not-a-count", { low, high }));
  if (value !== null && value < low) add(name, "not-a-count", { low, high });
  return value ?? 0;
}

/** A form that sets an academy's owning rule from a day on; shares are typed in hundredths. */
export function parseOwningForm(
  data: FormData,
  context: OwningContext,
): FormOutcome<{ readonly rule: DatedOwningRule; readonly why: string }> {
  const { issues, add } = collectIssues();
  const { bounds, earliest, latest, standing } = context;
  const part = (name: keyof OwningBounds): number => readPart(data, name, bounds, add);
  const rule = {
    sessions: part("sessions"),
    spanDays: part("spanDays"),
    restDays: part("restDays"),
    share: part("share") / 100,
    shareLow: part("shareLow") / 100,
  };
  if (issues.length === 0 && rule.shareLow > rule.share) add("shareLow", "owning-share-order");
  if (
    standing !== null &&
    issues.length === 0 &&
    (Object.keys(rule) as (keyof typeof rule)[]).every((name) => rule[name] === standing[name])
  )
    add("sessions", "owning-same");
  const from = fieldText(data, "from");
  if (!isCalendarDay(from)) add("from", "not-a-date");
  else if (from < earliest) add("from", "owning-too-early", { earliest });
  else if (from > latest) add("from", "too-far-ahead", { latest });
  const why = neededText(data, "why", LONGEST, add);
  if (issues.length > 0) return { kind: "issues", issues };
  return { kind: "ok", value: { rule: { from, ...rule }, why } };
}
