import type { Hand } from "@/lib/domain/handedness";
import { type FormOutcome, fieldText } from "./field-issue";
import { type Collect, collectIssues, neededText } from "./form-fields";

/** A student to whom something may go. */
export interface Taker {
  readonly id: string;
  readonly hand: Hand;
}

/** To whom it goes, whether values are turned for the other hand, and why. */
export interface WishedMove {
  readonly to: string;
  readonly signs: "keep" | "turn";
  readonly why: string;
}

/** What a move is read against. */
export interface MoveContext {
  /** Of the student whose it is now. */
  readonly hand: Hand;
  readonly takers: readonly Taker[];
}

/** The fields of a move; null where one can't be taken. */
export function readMove(data: FormData, { hand, takers }: MoveContext, add: Collect): WishedMove | null {
  const taker = takers.find((each) => each.id === fieldText(data, "to"));
  const why = neededText(data, "why", 300, add);
  if (!taker) return add("to", fieldText(data, "to") === "" ? "missing" : "not-a-choice");
  const answer = fieldText(data, "signs");
  const signs = taker.hand === hand ? "keep" : (["keep", "turn"] as const).find((each) => each === answer);
  // Nothing is guessed: a sign read for the wrong hand would be a change that never was.
  if (signs === undefined) return add("signs", "hands-differ");
  return why === "" ? null : { to: taker.id, signs, why };
}

/** The form that gives a session, or everything of a student, to another student. */
export function parseMoveForm(data: FormData, context: MoveContext): FormOutcome<WishedMove> {
  const { issues, add } = collectIssues();
  const value = readMove(data, context, add);
  return issues.length > 0 || value === null ? { kind: "issues", issues } : { kind: "ok", value };
}
