import { z } from "zod";
import { HANDS } from "@/lib/domain/handedness";
import { type FieldIssue, type FormOutcome, fieldText } from "./field-issue";
import { hasRefusedMarks } from "./text-key";

/** A student as a form gives it. */
export interface EnteredStudent {
  readonly alias: string;
  readonly birthYear: number | null;
  readonly hand: "right" | "left";
  readonly zone: string;
  readonly clubs: string;
  readonly consentGivenBy: string;
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
    consentGivenBy: z.string().min(1, "missing").max(LONGEST, "too-long").refine(isPlain, "hidden-mark"),
    consentOnPaper: z.literal("yes", "no-consent"),
  });
}

/**
 * A student's form.
 *
 * @param today `YYYY-MM-DD`; nobody is born later
 */
export function parseStudentForm(data: FormData, { today }: { readonly today: string }): FormOutcome<EnteredStudent> {
  const fields = ["alias", "birthYear", "hand", "zone", "clubs", "consentGivenBy", "consentOnPaper"];
  const parsed = schema(Number(today.slice(0, 4))).safeParse(
    Object.fromEntries(fields.map((name) => [name, fieldText(data, name)])),
  );
  if (parsed.success) {
    const { consentOnPaper: _, ...value } = parsed.data;
    return { kind: "ok", value };
  }
  const thisYear = Number(today.slice(0, 4));
  const args = { limit: LONGEST, low: thisYear - OLDEST, high: thisYear };
  const issues = parsed.error.issues.map(
    (issue): FieldIssue => ({ field: String(issue.path[0] ?? ""), code: issue.message, args }),
  );
  return { kind: "issues", issues };
}
