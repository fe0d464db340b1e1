import { isCalendarDay } from "@/lib/domain/calendar-day";
import { CONSENT_KINDS, type Consent, GIVERS, ownAgeDay } from "@/lib/domain/consent";
import { KEEPING_THRESHOLDS } from "@/lib/domain/keeping-thresholds";
import { lastDay } from "@/lib/domain/last-day";
import { type FormOutcome, fieldText } from "./field-issue";
import { type Collect, choice, collectIssues, neededText, ticked } from "./form-fields";

/** Letters of a name or of a few words about who gave a consent. */
export const LONGEST_GIVER = 60;

/** Of whom a consent is asked. */
export interface ConsentContext {
  /** `YYYY-MM-DD`, where the student is. */
  readonly today: string;
  readonly birthYear: number | null;
  readonly ownConsentAge: number;
}

/** Reads whose word a consent is, and from when to when; what is wrong goes to the issues. */
export function readConsentTerms(
  data: FormData,
  { today, birthYear, ownConsentAge }: ConsentContext,
  add: Collect,
): Omit<Consent, "kind" | "withdrawnOn" | "until"> & { readonly until: string } {
  const day = (name: "from" | "until"): string => {
    const text = fieldText(data, name);
    if (text === "") add(name, name === "until" ? "consent-end-missing" : "missing");
    else if (!isCalendarDay(text)) add(name, "not-a-date");
    else return text;
    return "";
  };
  const givenBy = neededText(data, "givenBy", LONGEST_GIVER, add);
  const giverIs = choice(data, "giverIs", GIVERS, "guardian", add);
  const [from, until] = [day("from"), day("until")];
  if (from !== "") {
    const own = ownAgeDay({ birthYear, ownConsentAge });
    if (giverIs === "guardian" && own !== null && own <= from)
      add("giverIs", "consent-own-word", { age: ownConsentAge });
    if (giverIs === "student" && birthYear !== null && Number(from.slice(0, 4)) - birthYear < ownConsentAge)
      add("giverIs", "consent-too-young", { age: ownConsentAge });
    if (birthYear !== null && Number(from.slice(0, 4)) < birthYear) add("from", "before-birth", { year: birthYear });
    const { value: months } = KEEPING_THRESHOLDS.longestConsentMonths;
    if (until !== "" && until < from) add("until", "ends-before");
    else if (until !== "" && until < today) add("until", "consent-over", { today });
    else if (until > lastDay(from, months)) add("until", "consent-too-long", { months });
    if (from > lastDay(today, KEEPING_THRESHOLDS.consentMonths.value)) add("from", "consent-far-ahead");
  }
  return { givenBy, giverIs, from, until };
}

/**
 * A consent that was given: what for, who gave it, whose word it is, from when to when, and that it is held on paper. An end
 * is always asked, because consent is asked anew.
 */
export function parseConsentForm(data: FormData, context: ConsentContext): FormOutcome<readonly Consent[]> {
  const { issues, add } = collectIssues();
  const kinds = ticked(data, "kinds", CONSENT_KINDS, add);
  if (kinds.length === 0) add("kinds", "consent-for-nothing");
  const terms = readConsentTerms(data, context, add);
  if (fieldText(data, "onPaper") !== "yes") add("onPaper", "consent-not-on-paper");
  if (issues.length > 0) return { kind: "issues", issues };
  return { kind: "ok", value: kinds.map((kind) => ({ kind, ...terms, withdrawnOn: null })) };
}
