import { z } from "zod";
import { CONSENT_KINDS, type Consent, giverOf } from "@/lib/domain/consent";
import { HANDS } from "@/lib/domain/handedness";
import { KEEPING_THRESHOLDS } from "@/lib/domain/keeping-thresholds";
import { LANGUAGES, type Language } from "@/lib/domain/language";
import { lastDay } from "@/lib/domain/last-day";
import { type FieldIssue, type FormOutcome, fieldText } from "./field-issue";
import { collectIssues } from "./form-fields";
import { type ConsentContext, readConsentTerms } from "./parse-consent-form";
import { hasRefusedMarks } from "./text-key";

/** A student as a form gives it. */
export interface EnteredStudent {
  readonly alias: string;
  readonly birthYear: number | null;
  readonly hand: "right" | "left";
  readonly zone: string;
  readonly clubs: string;
  readonly language: Language;
  /** To measure, and where it was ticked to share too, from today on. */
  readonly consents: readonly Consent[];
}

const OLDEST = 110;
const LONGEST = 60;

function isZone(text: string): boolean {
  try {
    new Intl.DateTimeFormat("en", { timeZone: text });
    return true;
  } catch {
    return false;
  }
}

const isPlain = (text: string): boolean => !hasRefusedMarks(text);

function schema(thisYear: number) {
  return z.object({
    alias: z.string().min(1, "missing").max(LONGEST, "too-long").refine(isPlain, "hidden-mark"),
    birthYear: z
      .string()
      .regex(/^(\d{4})?$/, "not-a-year")
      .transform((text) => (text === "" ? null : Number(text)))
      .refine((year) => year === null || (year <= thisYear && year >= thisYear - OLDEST), "not-a-year"),
    hand: z.enum(HANDS, "not-a-choice"),
    zone: z.string().refine(isZone, "not-a-zone"),
    clubs: z.string().max(LONGEST, "too-long").refine(isPlain, "hidden-mark"),
    // A sender that never asks for it is told in English.
    language: z.enum(["", ...LANGUAGES], "not-a-choice").transform((chosen) => (chosen === "" ? "en" : chosen)),
  });
}

/** Fields of a consent by their names here and on the form of a consent. */
const CONSENT_FIELDS = [
  ["consentGivenBy", "givenBy"],
  ["consentGiverIs", "giverIs"],
  ["consentUntil", "until"],
] as const;

/** What was consented to when a student was added: a consent to measure at least, with an end. */
function readConsents(data: FormData, context: ConsentContext): FormOutcome<readonly Consent[]> {
  const { today } = context;
  const terms = new FormData();
  for (const [here, there] of CONSENT_FIELDS) terms.set(there, fieldText(data, here));
  terms.set("from", today);
  if (fieldText(data, "consentGiverIs") === "") terms.set("giverIs", giverOf({ ...context, day: today }));
  // A sender that never asks for an end takes the usual one; an end that is asked for and left empty is asked again.
  if (!data.has("consentUntil")) terms.set("until", lastDay(today, KEEPING_THRESHOLDS.consentMonths.value));
  const { issues, add } = collectIssues();
  const given = readConsentTerms(terms, context, add);
  const renamed = issues.map((issue) => ({
    ...issue,
    field: CONSENT_FIELDS.find(([, there]) => there === issue.field)?.[0] ?? issue.field,
  }));
  if (fieldText(data, "consentOnPaper") !== "yes")
    renamed.push({ field: "consentOnPaper", code: "no-consent", args: {} });
  if (renamed.length > 0) return { kind: "issues", issues: renamed };
  const kinds = CONSENT_KINDS.filter((kind) => kind === "measure" || fieldText(data, "consentShare") === "yes");
  return { kind: "ok", value: kinds.map((kind) => ({ kind, ...given, withdrawnOn: null })) };
}

/**
 * A student's form.
 *
 * @param context.today `YYYY-MM-DD`; nobody is born later, and a consent begins on it
 * @param context.ownConsentAge from which age the student's own consent is asked for
 */
export function parseStudentForm(
  data: FormData,
  { today, ownConsentAge }: Pick<ConsentContext, "today" | "ownConsentAge">,
): FormOutcome<EnteredStudent> {
  const fields = ["alias", "birthYear", "hand", "zone", "clubs", "language"];
  const parsed = schema(Number(today.slice(0, 4))).safeParse(
    Object.fromEntries(fields.map((name) => [name, fieldText(data, name)])),
  );
  const birthYear = parsed.success ? parsed.data.birthYear : null;
  const consents = readConsents(data, { today, birthYear, ownConsentAge });
  if (parsed.success && consents.kind === "ok")
    return { kind: "ok", value: { ...parsed.data, consents: consents.value } };
  const thisYear = Number(today.slice(0, 4));
  const args = { limit: LONGEST, low: thisYear - OLDEST, high: thisYear };
  const wrong = parsed.error?.issues ?? [];
  const issues = wrong.map((issue): FieldIssue => ({ field: String(issue.path[0] ?? ""), code: issue.message, args }));
  return { kind: "issues", issues: [...issues, ...(consents.kind === "issues" ? consents.issues : [])] };
}
