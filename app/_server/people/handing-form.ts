import { HANDING_KINDS, LONGEST_HANDING_NOTE } from "@/lib/ingest/parse-handing-form";
import type { FieldModel, FormModel } from "@/lib/report/form-model";
import type { Words } from "@/lib/words/catalogue";
import type { FormDraft } from "../draft/form-draft";
import { field } from "../season/student-form";

/** What the form is asked to begin with, by its address. */
export interface HandingWish {
  readonly kind?: string;
  readonly to?: string;
}

/** The fields of a hand-over, the same for one student and for several. */
export function handingFields(
  words: Words,
  draft: FormDraft | null,
  source: {
    readonly coaches: readonly { readonly userId: string; readonly name: string }[];
    readonly today: string;
    readonly wish: HandingWish;
  },
): readonly FieldModel[] {
  const { coaches, today, wish } = source;
  const one = (spec: Parameters<typeof field>[3]) => field(words, draft, "handing-form", spec);
  return [
    one({
      name: "kind",
      kind: "radio",
      required: "yes",
      value: wish.kind === "cover" ? "cover" : "own",
      options: HANDING_KINDS.map((kind) => ({ value: kind, label: words.say(`handing-form.kind.${kind}`) })),
    }),
    one({
      name: "coach",
      kind: "select",
      required: "yes",
      value: coaches.some(({ userId }) => userId === wish.to) ? (wish.to ?? "") : (coaches[0]?.userId ?? ""),
      options: coaches.map(({ userId, name }) => ({ value: userId, label: name })),
    }),
    one({ name: "from", kind: "date", required: "yes", value: today }),
    one({ name: "until", kind: "date" }),
    one({ name: "note", kind: "textarea", hint: words.say("handing-form.note.hint", { most: LONGEST_HANDING_NOTE }) }),
  ];
}

/** The form that hands one student over. */
export function buildHandingForm(
  words: Words,
  draft: FormDraft | null,
  source: Parameters<typeof handingFields>[2] & { readonly studentId: string },
): FormModel {
  return {
    heading: "",
    explains: "",
    parts: [{ margin: "", explains: "", fields: handingFields(words, draft, source) }],
    grid: null,
    submit: words.say("handing-form.submit"),
    refusal: draft?.refusal ?? "",
    hidden: [{ name: "studentId", value: source.studentId }],
  };
}
