import { CHECKPOINTS, type Fundamental, UNITS, VIEWS } from "@/lib/domain/fundamental";
import { shownHalf } from "@/lib/domain/half-of-sd";
import { comesAfter, FIRST_OF_ALL, OWN_FIGURES } from "@/lib/ingest/parse-definition-form";
import type { FieldModel, FormModel } from "@/lib/report/form-model";
import type { Words } from "@/lib/words/catalogue";
import { sayFundamental } from "@/lib/words/say-fundamental";
import type { FormDraft } from "../draft/form-draft";
import { field } from "../season/student-form";

/** What the form that defines an own fundamental begins with. */
export interface DefinitionFormSource {
  /** Built-in and own, in the order of work. */
  readonly all: readonly Fundamental[];
  /** Null: it is new. */
  readonly now: {
    readonly fundamental: Fundamental;
    readonly read: "yes" | "no";
    /** How many changes of it are in sight. */
    readonly changes: number;
  } | null;
  readonly draft: FormDraft | null;
}

type One = (spec: Parameters<typeof field>[3]) => FieldModel;
type Part = FormModel["parts"][number];

const text = (value: number | null | undefined): string => (value === null || value === undefined ? "" : String(value));

function filmFields(words: Words, now: Fundamental | undefined, one: One): readonly FieldModel[] {
  const select = (name: string, value: string, options: readonly (readonly [string, string])[]) =>
    one({ name, kind: "select", value, options: options.map(([key, label]) => ({ value: key, label })) });
  return [
    select(
      "unit",
      now?.unit ?? "deg",
      UNITS.map((unit) => [unit, words.say(`unit.${unit}.name`)]),
    ),
    select(
      "view",
      now?.view ?? "face-on",
      VIEWS.map((view) => [view, words.say(`view.${view}`)]),
    ),
    select(
      "checkpoint",
      now?.checkpoint ?? "top",
      CHECKPOINTS.map((each) => [each, words.say(`checkpoint.${each}`)]),
    ),
    one({
      name: "mirrors",
      kind: "radio",
      value: now?.mirrors ?? "mirrors",
      options: ["mirrors", "same"].map((value) => ({ value, label: words.say(`definition.mirrors.${value}`) })),
    }),
  ];
}

function cameraPart(words: Words, { all, now }: DefinitionFormSource, one: One): Part {
  const was = now?.fundamental;
  const own = { value: OWN_FIGURES, label: words.say("definition-form.like.own") };
  return {
    margin: words.say("definition-form.part.camera"),
    explains: words.say("definition-form.part.camera.explains"),
    fields: [
      one({ name: "reading", kind: "text", required: "yes", value: was === undefined ? "" : shownHalf(was.readerSd) }),
      one({
        name: "like",
        kind: "select",
        value: OWN_FIGURES,
        options: [
          own,
          ...all
            .filter(({ id }) => id !== was?.id)
            .map((each) => ({
              value: each.id,
              label: words.say("definition-form.like.other", {
                name: sayFundamental(words, each),
                unit: words.say(`unit.${each.unit}.short`),
                view: words.say(`view.${each.view}`),
              }),
            })),
        ],
      }),
      one({ name: "camera", kind: "text", value: was === undefined ? "" : shownHalf(was.cameraSdUnknown) }),
      ...(["yaw", "roll", "offset"] as const).map((name) =>
        one({ name, kind: "text", value: was === undefined ? "" : String(was.sensitivity[name]) }),
      ),
    ],
  };
}

function worthPart(words: Words, { now }: DefinitionFormSource, one: One): Part {
  const was = now?.fundamental;
  const band = [
    one({ name: "low", kind: "text", value: text(was?.goals.iron.low) }),
    one({ name: "high", kind: "text", value: text(was?.goals.iron.high) }),
  ];
  return {
    margin: words.say("definition-form.part.worth"),
    explains: words.say("definition-form.part.worth.explains"),
    fields: [
      ...(now?.read === "yes" ? [] : band),
      one({ name: "least", kind: "text", required: "yes", value: text(was?.plausible.low) }),
      one({ name: "most", kind: "text", required: "yes", value: text(was?.plausible.high) }),
      one({ name: "worthwhile", kind: "text", value: text(was?.worthwhile) }),
    ],
  };
}

/** The form that defines an academy's own fundamental, or changes its definition. */
export function buildDefinitionForm(words: Words, source: DefinitionFormSource): FormModel {
  const { all, now, draft } = source;
  const one: One = (spec) => field(words, draft, "definition-form", spec);
  const kind = now === null ? "new" : "change";
  const was = now?.fundamental;
  const others = all.filter(({ id }) => id !== was?.id);
  const change = [
    one({
      name: "offered",
      kind: "radio",
      value: was?.retiredOn ? "no" : "yes",
      options: ["yes", "no"].map((value) => ({ value, label: words.say(`definition-form.offered.${value}`) })),
    }),
    one({ name: "why", kind: "text", required: "yes" }),
  ];
  return {
    heading: words.say(`definition-form.heading.${kind}`),
    explains: words.say(`definition-form.explains.${now?.read === "yes" ? "read" : kind}`),
    parts: [
      {
        margin: words.say("definition-form.part.what"),
        explains: "",
        fields: [
          one({ name: "name", kind: "text", required: "yes", value: was?.ownName ?? "" }),
          one({ name: "how", kind: "textarea", required: "yes", value: was?.ownHow ?? "" }),
          one({ name: "plus", kind: "text", required: "yes", value: was?.ownPlus ?? "" }),
          ...(now?.read === "yes" ? [] : filmFields(words, was, one)),
          one({
            name: "after",
            kind: "select",
            value: was === undefined ? (others.at(-1)?.id ?? FIRST_OF_ALL) : comesAfter(all, was.id),
            options: [
              { value: FIRST_OF_ALL, label: words.say("definition-form.after.first") },
              ...others.map((each) => ({ value: each.id, label: sayFundamental(words, each) })),
            ],
          }),
        ],
      },
      cameraPart(words, source, one),
      worthPart(words, source, one),
      ...(now === null ? [] : [{ margin: words.say("definition-form.part.change"), explains: "", fields: change }]),
    ],
    grid: null,
    submit: words.say(`definition-form.submit.${kind}`),
    refusal: draft?.refusal ?? "",
    hidden:
      now === null
        ? []
        : [
            { name: "fundamental", value: now.fundamental.id },
            { name: "seen", value: String(now.changes) },
          ],
  };
}
