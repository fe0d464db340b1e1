import type { Fundamental } from "@/lib/domain/fundamental";
import type { GoalBand } from "@/lib/domain/goal-band";
import type { FormModel } from "@/lib/report/form-model";
import type { Words } from "@/lib/words/catalogue";
import { sayPlus } from "@/lib/words/say-fundamental";
import type { FormDraft } from "../draft/form-draft";
import { field } from "../season/student-form";

/** What the form that sets a band begins with. */
export interface GoalFormSource {
  /** Null: it is the academy's. */
  readonly alias: string | null;
  readonly fundamental: Fundamental;
  readonly clubGroup: string;
  /** What holds today. */
  readonly now: GoalBand;
  /** Whether something of its own stands there, which could be given back. */
  readonly own: "stands" | "none";
  readonly today: string;
  readonly draft: FormDraft | null;
}

const edge = (value: number | null): string => (value === null ? "" : String(value));

/** The form that sets a band for a student, or for the academy and those of an age in it. */
export function buildGoalForm(words: Words, source: GoalFormSource): FormModel {
  const { alias, fundamental, now, own, draft, today } = source;
  const whose = alias === null ? "academy" : "student";
  const one = (spec: Parameters<typeof field>[3]) => field(words, draft, "goal-form", spec);
  const what = one({
    name: "what",
    kind: "radio",
    value: "band",
    options: [
      { value: "band", label: words.say("goal-form.what.band") },
      { value: "back", label: words.say(`goal-form.what.back.${whose}`) },
    ],
  });
  const reach = [
    one({
      name: "reach",
      kind: "radio",
      value: "academy",
      options: (["academy", "age-range"] as const).map((value) => ({
        value,
        label: words.say(`goal-form.reach.${value}`),
      })),
    }),
    one({ name: "ageFrom", kind: "number" }),
    one({ name: "ageTo", kind: "number" }),
  ];
  return {
    heading: words.say(`goals.form.${whose}`, { alias: alias ?? "" }),
    explains: words.say("goals.form.explains"),
    parts: [
      {
        margin: words.say("goals"),
        explains: words.say("goals.form.range", {
          unit: words.say(`unit.${fundamental.unit}.name`),
          plus: sayPlus(words, fundamental),
        }),
        fields: [
          ...(whose === "academy" ? reach : []),
          ...(own === "stands" || draft?.errors.what ? [what] : []),
          one({ name: "low", kind: "number", value: edge(now.low) }),
          one({ name: "high", kind: "number", value: edge(now.high) }),
          one({ name: "from", kind: "date", required: "yes", value: today }),
          one({
            name: "datedBack",
            kind: "checkbox",
            options: [{ value: "yes", label: words.say("goal-form.datedBack.yes") }],
          }),
          one({ name: "reason", kind: "text", required: "yes" }),
        ],
      },
    ],
    grid: null,
    submit: words.say("goals.form.submit"),
    refusal: draft?.refusal ?? "",
    hidden: [
      { name: "fundamental", value: fundamental.id },
      { name: "clubGroup", value: source.clubGroup },
    ],
  };
}
