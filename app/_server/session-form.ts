import type { ClubGrouping } from "@/lib/domain/club-grouping";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { CaptureAnswer } from "@/lib/report/capture-answer-model";
import type { FieldModel, FormModel, GridModel } from "@/lib/report/form-model";
import type { NoteAnswer } from "@/lib/report/note-answer-model";
import type { Words } from "@/lib/words/catalogue";
import { sayFundamental, sayPlus } from "@/lib/words/say-fundamental";
import type { FormDraft } from "./form-draft";
import { filmParts, unusualField, whenFields } from "./session-fields";
import { field } from "./student-form";

/** Swings that the grid offers. */
export const GRID_SWINGS = 10;

/** The form that adds a session of one student: when, how it was filmed, and the readings. It shows no earlier value. */
export function buildSessionForm(
  words: Words,
  source: {
    readonly alias: string;
    readonly fundamentals: readonly Fundamental[];
    readonly grouping: ClubGrouping;
    /** The group to begin with; null: the first. */
    readonly clubGroup: string | null;
    readonly today: string;
    readonly draft: FormDraft | null;
    readonly draftId: string | undefined;
    /** What each film can show, as the form stands. */
    readonly answers: readonly CaptureAnswer[];
    /** What the note says of strikes, as the form stands. */
    readonly note: NoteAnswer;
  },
): FormModel {
  const { draft, draftId } = source;
  const one = (spec: Parameters<typeof field>[3]): FieldModel => field(words, draft, "session-form", spec);
  const part = (name: string, fields: readonly FieldModel[]) => ({
    margin: words.say(`session-form.part.${name}`),
    explains: words.say(`session-form.part.${name}.explains`),
    fields,
  });
  return {
    heading: words.say("session-form.heading", { alias: source.alias }),
    explains: words.say("session-form.explains"),
    parts: [
      part("when", [
        ...whenFields(words, source, one),
        one({ name: "daysSincePractice", kind: "number" }),
        ...unusualField(words, draft, one),
      ]),
      {
        ...part("shots", [
          one({ name: "solid", kind: "number" }),
          one({ name: "balls", kind: "number" }),
          one({ name: "note", kind: "textarea" }),
        ]),
        note: source.note,
      },
      ...filmParts(words, source, one),
    ],
    grid: buildGrid(words, source.fundamentals, draft),
    submit: words.say("session-form.submit"),
    check: words.say("capture.check"),
    noteCheck: words.say("note.check"),
    refusal: draft?.refusal ?? "",
    hidden: draftId === undefined ? [] : [{ name: "draft", value: draftId }],
  };
}

/** Swings down, fundamentals across; what a derived fundamental follows from is read, it is not. */
export function buildGrid(words: Words, fundamentals: readonly Fundamental[], draft: FormDraft | null): GridModel {
  const columns = fundamentals.filter((fundamental) => fundamental.derivedFrom === null);
  const typed = new Map(draft?.entries ?? []);
  return {
    caption: words.say("session-form.grid"),
    swingLabel: words.say("session-form.swing"),
    columns: columns.map((fundamental) => ({
      fundamentalId: fundamental.id,
      label: sayFundamental(words, fundamental),
      unit: words.say(`unit.${fundamental.unit}.name`),
      sign: sayPlus(words, fundamental),
    })),
    rows: Array.from({ length: GRID_SWINGS }, (_, row) => ({
      label: words.say("session-form.swing-number", { number: row + 1 }),
      cells: columns.map((fundamental) => {
        const name = `r.${row + 1}.${fundamental.id}`;
        return {
          name,
          label: words.say("session-form.cell", { name: sayFundamental(words, fundamental), number: row + 1 }),
          value: typed.get(name) ?? "",
          error: draft?.errors[name] ?? "",
        };
      }),
    })),
  };
}
