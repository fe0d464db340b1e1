import { VIEWS, type View } from "@/lib/domain/fundamental";
import { type FormOutcome, fieldText } from "./field-issue";
import { collectIssues, neededText } from "./form-fields";

/** What can be set aside: a whole session, or the film of one view. */
export type AsidePart = "session" | View;

/** What is to be set aside or brought back, and why. */
export interface WishedAside {
  readonly part: AsidePart;
  readonly way: "aside" | "back";
  readonly why: string;
}

/** Longest reason, in letters: that of a session that is set aside. */
const LONGEST = 200;

/** A choice as the form sends it: which way, then what. */
export function asideChoice(way: WishedAside["way"], part: AsidePart): string {
  return `${way}:${part}`;
}

/** The form that sets a session or one of its films aside, or brings it back. */
export function parseAsideForm(data: FormData): FormOutcome<WishedAside> {
  const { issues, add } = collectIssues();
  const typed = fieldText(data, "what");
  const choices = (["session", ...VIEWS] as const).flatMap((part) =>
    (["aside", "back"] as const).map((way) => ({ part, way })),
  );
  const chosen = choices.find(({ part, way }) => asideChoice(way, part) === typed);
  if (!chosen) add("what", typed === "" ? "missing" : "not-a-choice");
  const why = neededText(data, "why", LONGEST, add);
  return issues.length > 0 || !chosen ? { kind: "issues", issues } : { kind: "ok", value: { ...chosen, why } };
}
