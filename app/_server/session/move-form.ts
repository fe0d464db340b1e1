import type { FiledStudent } from "@/db/read/students";
import type { FieldModel, FormModel } from "@/lib/report/form-model";
import type { Words } from "@/lib/words/catalogue";
import type { FormDraft } from "../draft/form-draft";
import { field } from "../season/student-form";

/** What gives something to another student. */
export type MoveKind = "move" | "split" | "merge";

type Spec = Parameters<typeof field>[3];

/** The fields that say to whom, with what signs and why; the signs are asked only where somebody plays from the other side. */
export function moveFields(
  words: Words,
  draft: FormDraft | null,
  source: { readonly student: FiledStudent; readonly takers: readonly FiledStudent[] },
): Readonly<Record<"to" | "signs" | "why", readonly FieldModel[]>> {
  const one = (spec: Spec): FieldModel => field(words, draft, "move", spec);
  const { student, takers } = source;
  const own = takers.some((taker) => taker.id === student.id);
  const options = takers.map((taker) => ({
    value: taker.id,
    label: words.say("move.taker", { alias: taker.alias, hand: words.say(`hand.${taker.hand}`) }),
  }));
  const choose = own ? [] : [{ value: "", label: words.say("move.choose") }];
  const differ = takers.some((taker) => taker.hand !== student.hand);
  const signs = (["keep", "turn"] as const).map((value) => ({ value, label: words.say(`move.signs.${value}`) }));
  return {
    to: [
      one({
        name: "to",
        kind: "select",
        required: "yes",
        options: [...choose, ...options],
        value: own ? student.id : "",
      }),
    ],
    signs: differ ? [one({ name: "signs", kind: "radio", options: signs })] : [],
    why: [one({ name: "why", kind: "text", required: "yes" })],
  };
}

/** A form that gives something to another student, or takes a session apart. */
export function buildMoveForm(
  words: Words,
  source: {
    readonly kind: MoveKind;
    readonly heading: string;
    readonly draft: FormDraft | null;
    readonly what: readonly FieldModel[];
    readonly move: ReturnType<typeof moveFields>;
    readonly hidden: FormModel["hidden"];
  },
): FormModel {
  const { kind, move, draft } = source;
  const part = (name: string, fields: readonly FieldModel[]) => ({
    margin: words.say(`move.part.${name}`),
    explains: words.say(`${kind}.part.${name}.explains`),
    fields,
  });
  return {
    heading: source.heading,
    explains: words.say(`${kind}.explains`),
    parts: [
      ...(source.what.length === 0 ? [] : [part("what", source.what)]),
      part("to", [...move.to, ...move.signs]),
      part("why", move.why),
    ],
    grid: null,
    submit: words.say(`${kind}.submit`),
    refusal: draft?.refusal ?? "",
    hidden: source.hidden,
  };
}
