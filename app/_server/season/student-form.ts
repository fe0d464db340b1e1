import { GIVERS } from "@/lib/domain/consent";
import { HANDS } from "@/lib/domain/handedness";
import { LANGUAGES } from "@/lib/domain/language";
import type { FieldModel, FormModel } from "@/lib/report/form-model";
import type { Words } from "@/lib/words/catalogue";
import type { FormDraft } from "../draft/form-draft";

/** One field with what was typed and what is wrong with it. */
export function field(
  words: Words,
  draft: FormDraft | null,
  form: string,
  spec: Pick<FieldModel, "name" | "kind"> & Partial<FieldModel>,
): FieldModel {
  const typed = draft?.entries.flatMap(([name, value]) => (name === spec.name ? [value] : []));
  // Of boxes any number is ticked, also none; any other field has one value.
  const kept = spec.kind === "checkbox" ? typed?.join(",") : typed?.at(-1);
  const hint = `${form}.${spec.name}.hint`;
  return {
    label: spec.label ?? words.say(`${form}.${spec.name}`),
    hint: spec.hint === undefined && words.has(hint) ? words.say(hint) : "",
    options: [],
    required: "no",
    ...spec,
    value: kept ?? spec.value ?? "",
    error: draft?.errors[spec.name] ?? "",
  };
}

/** The form that adds a student; it takes a minute. */
export function buildStudentForm(
  words: Words,
  draft: FormDraft | null,
  draftId: string | undefined,
  { zone, usualUntil }: { readonly zone: string; readonly usualUntil: string },
): FormModel {
  const one = (spec: Parameters<typeof field>[3]): FieldModel => field(words, draft, "student-form", spec);
  const part = (name: string, fields: readonly FieldModel[]) => ({
    margin: words.say(`student-form.part.${name}`),
    explains: words.say(`student-form.part.${name}.explains`),
    fields,
  });
  return {
    heading: words.say("student-form.heading"),
    explains: words.say("student-form.explains"),
    parts: [
      part("who", [
        one({ name: "alias", kind: "text", required: "yes" }),
        one({ name: "birthYear", kind: "number" }),
        one({
          name: "hand",
          kind: "radio",
          required: "yes",
          options: HANDS.map((hand) => ({ value: hand, label: words.say(`hand.${hand}`) })),
        }),
        one({ name: "clubs", kind: "text" }),
        one({ name: "zone", kind: "text", required: "yes", value: zone }),
        one({
          name: "language",
          kind: "radio",
          value: "en",
          options: LANGUAGES.map((language) => ({ value: language, label: words.say(`language.${language}`) })),
        }),
        one({
          name: "pain",
          kind: "radio",
          options: ["no", "yes"].map((answer) => ({
            value: answer,
            label: words.say(`student-form.pain.${answer}`),
          })),
        }),
      ]),
      part("consent", [
        one({ name: "consentGivenBy", kind: "text", required: "yes" }),
        one({
          name: "consentGiverIs",
          kind: "radio",
          options: GIVERS.map((giver) => ({ value: giver, label: words.say(`consent.giver.${giver}`) })),
        }),
        one({ name: "consentUntil", kind: "date", required: "yes", value: usualUntil }),
        one({
          name: "consentShare",
          kind: "checkbox",
          options: [{ value: "yes", label: words.say("student-form.consentShare.yes") }],
        }),
        one({
          name: "consentOnPaper",
          kind: "checkbox",
          required: "yes",
          options: [{ value: "yes", label: words.say("student-form.consentOnPaper.yes") }],
        }),
      ]),
    ],
    grid: null,
    submit: words.say("student-form.submit"),
    refusal: draft?.refusal ?? "",
    hidden: draftId === undefined ? [] : [{ name: "draft", value: draftId }],
  };
}
