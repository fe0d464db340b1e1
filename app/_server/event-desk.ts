import { randomUUID } from "node:crypto";
import { inTransaction } from "@/db/client";
import { readStudent } from "@/db/read/students";
import { readTrackKeys } from "@/db/read/tracks";
import { insertEvent } from "@/db/write/events";
import { insertHeight } from "@/db/write/students";
import type { Fundamental } from "@/lib/domain/fundamental";
import { parseEventForm, RECORDED_EVENTS } from "@/lib/ingest/parse-event-form";
import type { FieldModel, FormModel } from "@/lib/report/form-model";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { kindOf } from "./draft-forms";
import { findFormDraft, keepFormDraft } from "./form-draft";
import type { StudentViewer } from "./gate";
import { loadRules } from "./load-verdicts";
import { sayFieldIssues } from "./say-field-issues";
import { field } from "./student-form";
import { loadAcademyRules } from "./student-record";
import { type Refused, submitOnce } from "./submit-once";
import { withKeep } from "./with-keep";

const EVENT_FORM = "event-form";

function eventDraft(studentId: string): string {
  return kindOf(EVENT_FORM, studentId);
}

/** What was measured of the student: only that can begin anew. A derived fundamental does where its first part does. */
function measured({ db, scope, academy, student }: StudentViewer): readonly Fundamental[] {
  const read = new Set<string>(readTrackKeys(db, student).map((key) => key.fundamentalId));
  return loadAcademyRules(db, scope, academy).fundamentals.filter(
    (fundamental) => read.has(fundamental.id) || (fundamental.derivedFrom?.every((part) => read.has(part)) ?? false),
  );
}

/** The form that records what happened to a student, and which tracks begin anew with it. */
export function loadEventForm(viewer: StudentViewer, draftId: string, dropped?: string): FormModel {
  const { words, db, student } = viewer;
  const draft = findFormDraft(viewer, eventDraft(student.studentId), draftId);
  const one = (spec: Parameters<typeof field>[3]): FieldModel => field(words, draft, "event-form", spec);
  const part = (name: string, fields: readonly FieldModel[]) => ({
    margin: words.say(`event-form.part.${name}`),
    explains: words.say(`event-form.part.${name}.explains`),
    fields,
  });
  const tracks = measured(viewer).map((each) => ({ value: each.id, label: sayFundamental(words, each) }));
  const form: FormModel = {
    heading: words.say("event-form.heading", { alias: readStudent(db, student).alias }),
    explains: words.say("event-form.explains"),
    parts: [
      part("what", [
        one({
          name: "kind",
          kind: "select",
          required: "yes",
          options: RECORDED_EVENTS.map((kind) => ({ value: kind, label: words.say(`event.${kind}`) })),
          value: RECORDED_EVENTS[0],
        }),
        one({ name: "day", kind: "date", required: "yes", value: viewer.today }),
        one({ name: "heightCm", kind: "number" }),
        one({ name: "note", kind: "text" }),
      ]),
      ...(tracks.length === 0 ? [] : [part("anew", [one({ name: "rebaselines", kind: "checkbox", options: tracks })])]),
    ],
    grid: null,
    submit: words.say("event-form.submit"),
    refusal: draft?.refusal ?? "",
    hidden: [],
  };
  return withKeep(viewer, form, { form: EVENT_FORM, studentId: student.studentId, draftId, dropped });
}

/** Records an event, once, and judges anew; a refused form is kept with what is wrong in it. */
export async function addEvent(viewer: StudentViewer, data: FormData): Promise<{ readonly kind: "added" } | Refused> {
  const kind = eventDraft(viewer.student.studentId);
  const outcome = submitOnce<{ readonly kind: "added" }>(viewer, kind, data, () => enterEvent(viewer, data));
  if (outcome.kind === "added") await loadRules(viewer);
  return outcome;
}

function enterEvent(viewer: StudentViewer, data: FormData): { readonly kind: "added" } | Refused {
  const { words, db, student } = viewer;
  const parsed = parseEventForm(data, { today: viewer.today, fundamentals: measured(viewer) });
  if (parsed.kind === "issues") {
    const errors = sayFieldIssues(words, parsed.issues);
    const refusal = words.say("event-form.refusal", { problems: Object.keys(errors).length });
    return { kind: "refused", draftId: keepFormDraft(viewer, eventDraft(student.studentId), data, errors, refusal) };
  }
  const { heightCm, ...happened } = parsed.value;
  inTransaction(db, () => {
    insertEvent(db, student, { id: randomUUID(), ...happened });
    if (heightCm !== null) insertHeight(db, student, { day: happened.day, cm: heightCm });
  });
  return { kind: "added" };
}
