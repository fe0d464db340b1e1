import { DRILL_DECISIONS } from "@/lib/domain/drill-decision";
import type { FormModel } from "@/lib/report/form-model";
import type { Words } from "@/lib/words/catalogue";
import type { FormDraft } from "../draft/form-draft";
import { field } from "../season/student-form";
import { stopPart } from "./stop-part";

/** What the form that decides about a drill begins with. */
export interface DecideFormSource {
  readonly studentId: string;
  readonly assignmentId: string;
  /** The next day to be measured again, as it is proposed. */
  readonly next: string;
  /** Days before a film that are kept free of practice. */
  readonly rest: number;
  /** Why it isn't to go on today, in sentences; empty: nothing stands against it. */
  readonly stop: readonly string[];
  readonly draft: FormDraft | null;
}

/** The form that decides about a drill. Nothing is chosen beforehand: the choice is the coach's. */
export function buildDecideForm(words: Words, source: DecideFormSource): FormModel {
  const { draft, rest, stop } = source;
  const one = (spec: Parameters<typeof field>[3]) => field(words, draft, "decision-form", spec);
  return {
    heading: words.say("decide.margin"),
    explains: words.say("decide.explains"),
    parts: [
      ...stopPart(words, stop, one, words.say("decision-form.go-on")),
      {
        margin: words.say("decide.margin"),
        explains: "",
        fields: [
          one({
            name: "decision",
            kind: "radio",
            required: "yes",
            options: DRILL_DECISIONS.map((value) => ({ value, label: words.say(`decision-form.${value}`) })),
          }),
          one({ name: "why", kind: "text", required: "yes" }),
          one({
            name: "next",
            kind: "date",
            value: source.next,
            hint: words.say("decision-form.next.hint", { rest }),
          }),
        ],
      },
    ],
    grid: null,
    submit: words.say("decision-form.submit"),
    refusal: draft?.refusal ?? "",
    hidden: [
      { name: "studentId", value: source.studentId },
      { name: "assignmentId", value: source.assignmentId },
    ],
  };
}
