import { CONSENT_KINDS, type Consent, type ConsentAsked, consentStanding, GIVERS, giverOf } from "@/lib/domain/consent";
import { usualConsent } from "@/lib/domain/usual-consent";
import type { FieldModel, FormModel } from "@/lib/report/form-model";
import type { Words } from "@/lib/words/catalogue";
import type { FormDraft } from "../draft/form-draft";
import { field } from "../season/student-form";

/** The fields that say whose word a consent is, and from when to when. */
export function termFields(
  words: Words,
  draft: FormDraft | null,
  form: string,
  terms: { readonly giver: Consent["giverIs"] | ""; readonly from: string; readonly until: string },
): readonly FieldModel[] {
  const one = (spec: Parameters<typeof field>[3]): FieldModel =>
    field(words, draft, form, {
      ...spec,
      label: words.say(`consent-form.${spec.name}`),
      hint: hintOf(words, spec.name),
    });
  return [
    one({ name: "givenBy", kind: "text", required: "yes" }),
    one({
      name: "giverIs",
      kind: "radio",
      required: "yes",
      value: terms.giver,
      options: GIVERS.map((giver) => ({ value: giver, label: words.say(`consent.giver.${giver}`) })),
    }),
    one({ name: "from", kind: "date", required: "yes", value: terms.from }),
    one({ name: "until", kind: "date", required: "yes", value: terms.until }),
    one({
      name: "onPaper",
      kind: "checkbox",
      required: "yes",
      options: [{ value: "yes", label: words.say("consent-form.onPaper.yes") }],
    }),
  ];
}

function hintOf(words: Words, name: string): string {
  const key = `consent-form.${name}.hint`;
  return words.has(key) ? words.say(key) : "";
}

/** The form by which a consent is given: what is not in force is ticked, and the usual days are filled in. */
export function buildConsentForm(
  words: Words,
  draft: FormDraft | null,
  consents: readonly Consent[],
  asked: ConsentAsked,
): FormModel {
  const missing = CONSENT_KINDS.filter((kind) => consentStanding(consents, kind, asked).kind !== "given");
  const ticked = missing.length === 0 ? CONSENT_KINDS : missing;
  const terms = usualConsent(consents, ticked, asked);
  return {
    heading: words.say("consent-form.heading"),
    explains: words.say("consent-form.explains"),
    parts: [
      {
        margin: words.say("consent-form.heading"),
        explains: "",
        fields: [
          field(words, draft, "consent-form", {
            name: "kinds",
            kind: "checkbox",
            value: ticked.join(","),
            options: CONSENT_KINDS.map((kind) => ({ value: kind, label: words.say(`consent-form.kinds.${kind}`) })),
          }),
          ...termFields(words, draft, "consent-form", {
            giver: giverOf({ ...asked, day: terms.from }),
            ...terms,
          }),
        ],
      },
    ],
    grid: null,
    submit: words.say("consent-form.submit"),
    refusal: draft?.refusal ?? "",
    hidden: [],
  };
}

/** The form by which a consent is taken back; `kinds`: what there is to take back. */
export function buildWithdrawalForm(
  words: Words,
  draft: FormDraft | null,
  { alias, kinds, today }: { readonly alias: string; readonly kinds: readonly string[]; readonly today: string },
): FormModel {
  const one = (spec: Parameters<typeof field>[3]): FieldModel => field(words, draft, "withdrawal-form", spec);
  return {
    heading: words.say("withdrawal-form.heading", { alias }),
    explains: words.say("withdrawal-form.explains"),
    parts: [
      {
        margin: words.say("consent.withdraw"),
        explains: words.say("withdrawal-form.then"),
        fields: [
          one({
            name: "kinds",
            kind: "checkbox",
            value: kinds.length === 1 ? (kinds[0] ?? "") : "",
            options: kinds.map((kind) => ({ value: kind, label: words.say(`consent-form.kinds.${kind}`) })),
          }),
          one({ name: "withdrawnOn", kind: "date", required: "yes", value: today }),
          one({ name: "withdrawnBy", kind: "text", required: "yes" }),
        ],
      },
    ],
    grid: null,
    submit: words.say("withdrawal-form.submit"),
    refusal: draft?.refusal ?? "",
    hidden: [],
  };
}

/** The form that says on which day a student left. */
export function buildDepartureForm(
  words: Words,
  draft: FormDraft | null,
  source: {
    readonly alias: string;
    readonly departedOn: string | null;
    readonly today: string;
    readonly months: number;
  },
): FormModel {
  const { alias, departedOn, today, months } = source;
  return {
    heading: words.say("departure-form.heading", { alias }),
    explains: words.say("departure-form.explains", { months }),
    parts: [
      {
        margin: words.say("departure-form.part"),
        explains: words.say("departure-form.part.explains"),
        fields: [
          field(words, draft, "departure-form", { name: "departedOn", kind: "date", value: departedOn ?? today }),
        ],
      },
    ],
    grid: null,
    submit: words.say("departure-form.submit"),
    refusal: draft?.refusal ?? "",
    hidden: [],
  };
}
