import type { Fundamental } from "@/lib/domain/fundamental";
import type { FormModel } from "@/lib/report/form-model";
import type { Words } from "@/lib/words/catalogue";
import { sayFundamental } from "@/lib/words/say-fundamental";
import type { FormDraft } from "../draft/form-draft";
import { field } from "../season/student-form";

/** What the form of a film's plan begins with. */
export interface PlanFormSource {
  readonly offered: readonly Fundamental[];
  /** Of the plan that the page shows. */
  readonly fundamentals: readonly string[];
  readonly swings: number;
  readonly dueOn: string;
  readonly clubGroup: string;
  readonly explains: string;
  readonly draft: FormDraft | null;
}

/** The form in which a coach changes the plan of a film and keeps it as it was told. */
export function buildPlanForm(words: Words, source: PlanFormSource): FormModel {
  const { draft } = source;
  const one = (spec: Parameters<typeof field>[3]) => field(words, draft, "plan.form", spec);
  return {
    heading: words.say("plan.form.heading"),
    explains: source.explains,
    parts: [
      {
        margin: words.say("plan.form.heading"),
        explains: "",
        fields: [
          one({
            name: "fundamentals",
            kind: "checkbox",
            value: source.fundamentals.join(","),
            options: source.offered.map((each) => ({ value: each.id, label: sayFundamental(words, each) })),
          }),
          one({ name: "swings", kind: "number", required: "yes", value: String(source.swings) }),
          one({ name: "dueOn", kind: "date", required: "yes", value: source.dueOn }),
        ],
        refresh: words.say("plan.form.work-out"),
      },
    ],
    grid: null,
    submit: words.say("plan.form.submit"),
    refusal: draft?.refusal ?? "",
    hidden: [{ name: "clubGroup", value: source.clubGroup }],
  };
}
