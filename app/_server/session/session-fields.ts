import { type ClubGrouping, currentGroups } from "@/lib/domain/club-grouping";
import { VIEWS, type View } from "@/lib/domain/fundamental";
import { CIRCUMSTANCES } from "@/lib/domain/session";
import { notFilmedField } from "@/lib/ingest/parse-capture-form";
import type { CaptureAnswer } from "@/lib/report/capture-answer-model";
import type { FieldModel, FormModel } from "@/lib/report/form-model";
import type { Words } from "@/lib/words/catalogue";
import { sayGroupOfClubs } from "@/lib/words/say-club";
import type { FormDraft } from "../draft/form-draft";
import type { field } from "../season/student-form";
import { captureFields, sightingFields, sightingNames } from "./capture-fields";

type One = (spec: Parameters<typeof field>[3]) => FieldModel;

/** When a session was and how: its day, club and circumstances. */
export function whenFields(
  words: Words,
  source: { readonly grouping: ClubGrouping; readonly clubGroup: string | null; readonly today: string },
  one: One,
): readonly FieldModel[] {
  const groups = currentGroups(source.grouping).map((group) => ({
    value: group.id,
    label: sayGroupOfClubs(words, group),
  }));
  return [
    one({ name: "day", kind: "date", required: "yes", value: source.today }),
    one({ name: "clubGroup", kind: "select", required: "yes", options: groups, value: source.clubGroup ?? "" }),
    one({ name: "club", kind: "text" }),
    one({
      name: "circumstance",
      kind: "select",
      required: "yes",
      options: CIRCUMSTANCES.map((value) => ({ value, label: words.say(`circumstance.${value}`) })),
      value: "unaided",
    }),
    one({ name: "aid", kind: "text" }),
  ];
}

/** How each view was filmed, with what its film can show. */
export function filmParts(
  words: Words,
  source: { readonly draft: FormDraft | null; readonly answers: readonly CaptureAnswer[] },
  one: One,
): FormModel["parts"] {
  return VIEWS.map((view) => ({
    margin: words.say("session-form.part.film", { view: words.say(`view.${view}`) }),
    explains: words.say("session-form.part.film.explains"),
    fields: [
      one({
        name: notFilmedField(view),
        kind: "checkbox",
        label: words.say("session-form.notFilmed"),
        options: [{ value: "yes", label: words.say("session-form.notFilmed.yes") }],
      }),
      ...captureFields(words, view, one),
    ],
    refresh: words.say("session-form.notFilmed.refresh"),
    more: {
      summary: words.say("capture.summary"),
      fields: sightingFields(words, view, one),
      open: isSighted(source.draft, view),
    },
    answer: source.answers.find((answer) => answer.view === view) ?? null,
  }));
}

/** Whether anything was typed into what was seen of a view's film, so that it is open again. */
function isSighted(draft: FormDraft | null, view: View): "yes" | "no" {
  const names = sightingNames(view);
  return draft?.entries.some(([name, value]) => names.includes(name) && value !== "") ? "yes" : "no";
}
