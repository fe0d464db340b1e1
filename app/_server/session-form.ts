import { type ClubGrouping, currentGroups } from "@/lib/domain/club-grouping";
import { VIEWS, type View } from "@/lib/domain/fundamental";
import { CIRCUMSTANCES } from "@/lib/domain/session";
import type { CaptureAnswer } from "@/lib/report/capture-answer-model";
import type { FieldModel, FormModel } from "@/lib/report/form-model";
import type { NoteAnswer } from "@/lib/report/note-answer-model";
import type { Words } from "@/lib/words/catalogue";
import { sayGroupOfClubs } from "@/lib/words/say-club";
import { captureFields, sightingFields, sightingNames } from "./capture-fields";
import type { FormDraft } from "./form-draft";
import { buildSessionGrid, type GridSource } from "./session-grid";
import { field } from "./student-form";

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
  const choices = (values: readonly string[], prefix: string) =>
    values.map((value) => ({ value, label: words.say(`${prefix}.${value}`) }));
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
        one({ name: "day", kind: "date", required: "yes", value: source.today }),
        one({
          name: "clubGroup",
          kind: "select",
          required: "yes",
          options: currentGroups(source.grouping).map((group) => ({
            value: group.id,
            label: sayGroupOfClubs(words, group),
          })),
          value: source.clubGroup ?? "",
        }),
        one({ name: "club", kind: "text" }),
        one({
          name: "circumstance",
          kind: "select",
          required: "yes",
          options: choices(CIRCUMSTANCES, "circumstance"),
          value: "unaided",
        }),
        one({ name: "aid", kind: "text" }),
        one({ name: "daysSincePractice", kind: "number" }),
      ]),
      {
        ...part("shots", [
          one({ name: "solid", kind: "number" }),
          one({ name: "balls", kind: "number" }),
          one({ name: "note", kind: "textarea" }),
        ]),
        note: source.note,
      },
      ...VIEWS.map((view) => ({
        margin: words.say("session-form.part.film", { view: words.say(`view.${view}`) }),
        explains: words.say("session-form.part.film.explains"),
        fields: captureFields(words, view, one),
        more: {
          summary: words.say("capture.summary"),
          fields: sightingFields(words, view, one),
          open: isSighted(draft, view),
        },
        answer: source.answers.find((answer) => answer.view === view) ?? null,
      })),
    ],
    grid: buildSessionGrid(words, source.grid, draft),
    submit: words.say("session-form.submit"),
    check: words.say("capture.check"),
    noteCheck: words.say("note.check"),
    refusal: draft?.refusal ?? "",
    hidden: draftId === undefined ? [] : [{ name: "draft", value: draftId }],
  };
}

/** Whether anything was typed into what was seen of a view's film, so that it is open again. */
function isSighted(draft: FormDraft | null, view: View): "yes" | "no" {
  const names = sightingNames(view);
  return draft?.entries.some(([name, value]) => names.includes(name) && value !== "") ? "yes" : "no";
}
