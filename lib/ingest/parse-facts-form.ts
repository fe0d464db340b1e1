import type { Hand } from "@/lib/domain/handedness";
import type { SessionFacts } from "@/lib/domain/session-change";
import type { FormOutcome } from "./field-issue";
import { collectIssues, freeText, neededText } from "./form-fields";
import { readCaptures } from "./parse-capture-form";
import { readSessionFacts, type SessionFormContext } from "./parse-session-form";

/** What a session's facts are said to be, and why they are said anew. */
export type WishedFacts = SessionFacts & { readonly why: string };

/**
 * The form that says a session's facts anew: the fields of a new session without its readings, why it is set aside, why each
 * film is, and a reason for the change.
 */
export function parseFactsForm(
  data: FormData,
  context: Pick<SessionFormContext, "today" | "grouping" | "birthYear"> & { readonly hand: Hand },
): FormOutcome<WishedFacts> {
  const { issues, add } = collectIssues();
  const { clubGroup, ...said } = readSessionFacts(data, context, add);
  const captures = readCaptures(data, context.hand, add).map((film) => ({
    ...film,
    setAsideReason: freeText(data, `aside.${film.view}`, 200, add),
  }));
  const setAsideReason = freeText(data, "setAside", 200, add);
  const why = neededText(data, "why", 300, add);
  if (issues.length > 0 || clubGroup === null) return { kind: "issues", issues };
  return { kind: "ok", value: { ...said, clubGroup, setAsideReason, captures, why } };
}
