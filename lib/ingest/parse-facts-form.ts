import type { Hand } from "@/lib/domain/handedness";
import type { SessionFacts } from "@/lib/domain/session-change";
import type { FormOutcome } from "./field-issue";
import { type Collect, collectIssues, freeText, neededText } from "./form-fields";
import { readCaptures } from "./parse-capture-form";
import { readSessionFacts, type SessionFormContext } from "./parse-session-form";
import { nameKey } from "./text-key";

/** What a session's facts are said to be, and why they are said anew. */
export type WishedFacts = SessionFacts & { readonly why: string };

/** Longest name of a reader, in letters. */
const LONGEST_NAME = 60;

/** The reader's name; one that is known already is written as it is known, for two spellings would be two readers. */
function readReader(data: FormData, known: readonly string[], add: Collect): string {
  const typed = neededText(data, "reader", LONGEST_NAME, add);
  if (known.includes(typed)) return typed;
  return known.find((name) => nameKey(name) === nameKey(typed)) ?? typed;
}

/**
 * The form that says a session's facts anew: the fields of a new session without its readings, who read it, why it is set
 * aside, why each film is, and a reason for the change.
 */
export function parseFactsForm(
  data: FormData,
  context: Pick<SessionFormContext, "today" | "grouping" | "birthYear"> & {
    readonly hand: Hand;
    /** Names of everybody who has read a film. */
    readonly readers: readonly string[];
  },
): FormOutcome<WishedFacts> {
  const { issues, add } = collectIssues();
  const { clubGroup, ...said } = readSessionFacts(data, context, add);
  const captures = readCaptures(data, context.hand, add).map((film) => ({
    ...film,
    setAsideReason: freeText(data, `aside.${film.view}`, 200, add),
  }));
  const setAsideReason = freeText(data, "setAside", 200, add);
  const reader = readReader(data, context.readers, add);
  const why = neededText(data, "why", 300, add);
  if (issues.length > 0 || clubGroup === null) return { kind: "issues", issues };
  return { kind: "ok", value: { ...said, clubGroup, reader, setAsideReason, captures, why } };
}
