import type { FieldModel, FormModel } from "@/lib/report/form-model";
import type { PeoplePart } from "@/lib/report/people-model";
import type { Words } from "@/lib/words/catalogue";
import { SHORTEST_PASSWORD } from "../access/password-rules";
import { field } from "../season/student-form";

/** A field by its name; its words stand under its form's. */
export type FieldSpec = Pick<FieldModel, "name" | "kind"> & Partial<FieldModel>;

/** What a refusal says of a form, and of its fields by name. */
export interface Said {
  readonly refusal: string;
  readonly errors: Readonly<Record<string, string>>;
}

export const NOTHING_SAID: Said = { refusal: "", errors: {} };

/** A form of a few fields, whose words stand under its name. */
export function smallForm(
  words: Words,
  name: string,
  fields: readonly FieldSpec[],
  { refusal, errors }: Said = NOTHING_SAID,
  hidden: FormModel["hidden"] = [],
): FormModel {
  const draft = { entries: [], errors, refusal };
  const hintOf = (of: string): Partial<FieldModel> => {
    const key = `${name}.${of}.hint`;
    return { hint: words.has(key) ? words.say(key, { shortest: SHORTEST_PASSWORD }) : "" };
  };
  return {
    heading: "",
    explains: "",
    parts: [
      {
        margin: "",
        explains: "",
        fields: fields.map((spec) => field(words, draft, name, { ...hintOf(spec.name), ...spec })),
      },
    ],
    grid: null,
    submit: words.say(`${name}.submit`),
    refusal,
    hidden,
  };
}

/** A part of a page with only what is said of it. */
export function peoplePart(margin: string, has: Partial<PeoplePart>): PeoplePart {
  return { margin, heading: "", paragraphs: [], facts: [], table: null, links: [], once: null, forms: [], ...has };
}
