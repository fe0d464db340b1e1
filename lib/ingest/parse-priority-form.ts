import { type FormOutcome, fieldText } from "./field-issue";
import { collectIssues, neededText } from "./form-fields";

/** The word for letting the order of work choose. */
export const BY_ORDER = "order-of-work";

/** What a coach puts in hand, as a form says it. */
export interface EnteredPriority {
  /** Null: the order of work chooses again. */
  readonly fundamentalId: string | null;
  readonly clubGroup: string;
  readonly reason: string;
}

/** A reason is a sentence or two. */
const REASON_LIMIT = 300;

/**
 * A form that puts a fundamental in hand: which one, with which clubs, and why.
 *
 * @param offered fundamentals and groups of clubs that the page offers; anything else is refused
 */
export function parsePriorityForm(
  data: FormData,
  offered: { readonly fundamentals: readonly string[]; readonly clubGroups: readonly string[] },
): FormOutcome<EnteredPriority> {
  const { issues, add } = collectIssues();
  const wished = fieldText(data, "fundamentalId");
  if (wished === "") add("fundamentalId", "missing");
  else if (wished !== BY_ORDER && !offered.fundamentals.includes(wished)) add("fundamentalId", "not-a-choice");
  const clubGroup = fieldText(data, "clubGroup");
  if (!offered.clubGroups.includes(clubGroup)) add("fundamentalId", "not-a-choice");
  const reason = neededText(data, "reason", REASON_LIMIT, add);
  if (issues.length > 0) return { kind: "issues", issues };
  return { kind: "ok", value: { fundamentalId: wished === BY_ORDER ? null : wished, clubGroup, reason } };
}
