import { isCalendarDay } from "@/lib/domain/calendar-day";
import type { ConsentKind } from "@/lib/domain/consent";
import { type FormOutcome, fieldText } from "./field-issue";
import { collectIssues, neededText, ticked } from "./form-fields";
import { LONGEST_GIVER } from "./parse-consent-form";

/** A consent taken back: what for, from which day on, and who said so. */
export interface Withdrawal {
  readonly kinds: readonly ConsentKind[];
  readonly withdrawnOn: string;
  readonly withdrawnBy: string;
}

/**
 * A withdrawal. The day may lie in the past, as when somebody was told before it could be entered, and never ahead: until then
 * the consent's own end is there.
 *
 * @param offered what there is to withdraw
 */
export function parseWithdrawalForm(
  data: FormData,
  { today, offered }: { readonly today: string; readonly offered: readonly ConsentKind[] },
): FormOutcome<Withdrawal> {
  const { issues, add } = collectIssues();
  const kinds = ticked(data, "kinds", offered, add);
  if (kinds.length === 0) add("kinds", "consent-none-ticked");
  const withdrawnOn = fieldText(data, "withdrawnOn");
  if (!isCalendarDay(withdrawnOn)) add("withdrawnOn", "not-a-date");
  else if (withdrawnOn > today) add("withdrawnOn", "future-date", { today });
  const withdrawnBy = neededText(data, "withdrawnBy", LONGEST_GIVER, add);
  return issues.length > 0 ? { kind: "issues", issues } : { kind: "ok", value: { kinds, withdrawnOn, withdrawnBy } };
}
