import type { FieldModel, FormModel } from "@/lib/report/form-model";
import type { Words } from "@/lib/words/catalogue";
import { ownPath } from "../door/own-path";
import { SHORTEST_PASSWORD } from "./password-rules";

/** What was typed into a form of somebody who isn't logged in, and what is wrong with it; passwords are never among it. */
export interface Typed {
  readonly values: Readonly<Record<string, string>>;
  readonly errors: Readonly<Record<string, string>>;
  readonly refusal: string;
}

export const NOTHING_TYPED: Typed = { values: {}, errors: {}, refusal: "" };

const NEVER_SHOWN = new Set<FieldModel["kind"]>(["password", "new-password", "code"]);

/** A form of one part; its words stand under `form`. */
export function entryForm(
  words: Words,
  form: string,
  fields: readonly { readonly name: string; readonly kind: FieldModel["kind"]; readonly value?: string }[],
  typed: Typed,
  hidden: FormModel["hidden"] = [],
): FormModel {
  return {
    heading: words.say(`${form}.heading`),
    explains: words.say(`${form}.explains`),
    parts: [
      {
        margin: words.say(`${form}.margin`),
        explains: "",
        fields: fields.map(({ name, kind, value = "" }) => ({
          name,
          kind,
          label: words.say(`${form}.${name}`),
          hint: words.has(`${form}.${name}.hint`)
            ? words.say(`${form}.${name}.hint`, { shortest: SHORTEST_PASSWORD })
            : "",
          value: NEVER_SHOWN.has(kind) ? "" : (typed.values[name] ?? value),
          options: [],
          required: "yes",
          error: typed.errors[name] ?? "",
        })),
      },
    ],
    grid: null,
    submit: words.say(`${form}.submit`),
    refusal: typed.refusal,
    hidden,
  };
}

/** The form with which somebody logs in. */
export function signInForm(words: Words, typed: Typed, to: string): FormModel {
  const fields = [
    { name: "email", kind: "email" },
    { name: "password", kind: "password" },
  ] as const;
  return entryForm(words, "sign-in", fields, typed, [{ name: "to", value: ownPath(to, "/") }]);
}

/** The second step: a code from the program that the account was joined with, or one of the kept ones. */
export function codeForm(words: Words, typed: Typed, to: string): FormModel {
  return entryForm(words, "sign-in-code", [{ name: "code", kind: "code" }], typed, [
    { name: "to", value: ownPath(to, "/") },
  ]);
}
