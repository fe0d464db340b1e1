import type { DrillDescription } from "@/lib/domain/drill-version";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { FormModel } from "@/lib/report/form-model";
import type { Words } from "@/lib/words/catalogue";
import { sayFundamental } from "@/lib/words/say-fundamental";
import type { FormDraft } from "../draft/form-draft";
import { field } from "../season/student-form";

/** What the form about a drill of the library begins with. */
export interface LibraryFormSource {
  readonly fundamentals: readonly Fundamental[];
  /** Null: it is new. */
  readonly drill:
    | (DrillDescription & {
        readonly id: string;
        readonly given: number;
        /** How many changes of it are in sight. */
        readonly changes: number;
      })
    | null;
  readonly draft: FormDraft | null;
}

const text = (value: number | null | undefined): string => (value === null || value === undefined ? "" : String(value));

/** The form that adds a drill to the library, or describes one anew. */
export function buildLibraryForm(words: Words, { fundamentals, drill, draft }: LibraryFormSource): FormModel {
  const one = (spec: Parameters<typeof field>[3]) => field(words, draft, "library-form", spec);
  const kind = drill === null ? "new" : "change";
  const purpose = one({
    name: "fundamental",
    kind: "select",
    value: drill?.fundamentalId ?? "",
    options: fundamentals.map((each) => ({ value: each.id, label: sayFundamental(words, each) })),
  });
  const change = [
    one({
      name: "offered",
      kind: "radio",
      value: drill?.retiredOn === null ? "yes" : "no",
      options: ["yes", "no"].map((value) => ({ value, label: words.say(`library-form.offered.${value}`) })),
    }),
    one({ name: "why", kind: "text", required: "yes" }),
  ];
  return {
    heading: words.say(`library-form.heading.${kind}`),
    explains: words.say(`library-form.explains.${kind}`),
    parts: [
      {
        margin: words.say("practice.drill"),
        explains: "",
        fields: [
          one({ name: "name", kind: "text", required: "yes", value: drill?.name ?? "" }),
          ...(drill === null || drill.given === 0 ? [purpose] : []),
          one({ name: "how", kind: "textarea", required: "yes", value: drill?.how ?? "" }),
          one({ name: "cautions", kind: "textarea", value: drill?.cautions ?? "" }),
          one({ name: "reps", kind: "number", value: text(drill?.reps) }),
          one({ name: "minutes", kind: "number", value: text(drill?.minutesADay) }),
          one({ name: "daysAWeek", kind: "number", value: text(drill?.daysAWeek) }),
          one({ name: "dose", kind: "text", value: drill?.dose ?? "" }),
          one({ name: "remeasureDays", kind: "number", value: text(drill?.remeasureDays) }),
          ...(drill === null ? [] : change),
        ],
      },
    ],
    grid: null,
    submit: words.say(`library-form.submit.${kind}`),
    refusal: draft?.refusal ?? "",
    hidden:
      drill === null
        ? []
        : [
            { name: "drill", value: drill.id },
            { name: "seen", value: String(drill.changes) },
          ],
  };
}
