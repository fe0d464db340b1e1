import { KEEPING_THRESHOLDS } from "@/lib/domain/keeping-thresholds";
import { type FormOutcome, fieldText } from "./field-issue";
import { collectIssues } from "./form-fields";

/** What an academy sets for keeping. */
export const KEEPING_SETTINGS = ["keepMonths", "linkDays", "ownConsentAge"] as const;

/** See `KEEPING_SETTINGS`: months, days, years. */
export type Keeping = Readonly<Record<(typeof KEEPING_SETTINGS)[number], number>>;

/** How long an academy keeps records and opens links, and from which age a student's own word is asked for. */
export function parseKeepingForm(data: FormData): FormOutcome<Keeping> {
  const { issues, add } = collectIssues();
  const value = Object.fromEntries(
    KEEPING_SETTINGS.map((name) => {
      const [low, high] = KEEPING_THRESHOLDS[name].bounds;
      const text = fieldText(data, name);
      const number = /^\d{1,4}$/.test(text) ? Number(text) : Number.NaN;
      if (!(number >= low && number <= high)) add(name, "not-a-count", { low, high });
      return [name, number];
    }),
  ) as Record<(typeof KEEPING_SETTINGS)[number], number>;
  return issues.length > 0 ? { kind: "issues", issues } : { kind: "ok", value };
}
