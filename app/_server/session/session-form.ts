import type { ClubGrouping } from "@/lib/domain/club-grouping";
import type { CaptureAnswer } from "@/lib/report/capture-answer-model";
import type { FieldModel, FormModel } from "@/lib/report/form-model";
import type { NoteAnswer } from "@/lib/report/note-answer-model";
import type { Words } from "@/lib/words/catalogue";
import type { FormDraft } from "../draft/form-draft";
import { field } from "../season/student-form";
import { filmParts, whenFields } from "./session-fields";
import { buildSessionGrid, type GridSource } from "./session-grid";

/** The form that adds a session of one student: when, how it was filmed, and the readings. It shows no earlier value. */
export function buildSessionForm(
  words: Words,
  source: {
    readonly alias: string;
    readonly grid: GridSource;
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
      {
        ...part("when", [...whenFields(words, source, one), one({ name: "daysSincePractice", kind: "number" })]),
        refresh: words.say("session-form.columns"),
      },
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
    grid: buildSessionGrid(words, source.grid, draft),
    submit: words.say("session-form.submit"),
    check: words.say("capture.check"),
    noteCheck: words.say("note.check"),
    refusal: draft?.refusal ?? "",
    hidden: draftId === undefined ? [] : [{ name: "draft", value: draftId }],
  };
}
