import { randomUUID } from "node:crypto";
import { insertStudent } from "@/db/write/students";
import { parseStudentForm } from "@/lib/ingest/parse-student-form";
import { instantOf } from "../clock";
import { keepFormDraft } from "../draft/form-draft";
import { sayFieldIssues } from "../draft/say-field-issues";
import { type Refused, submitOnce } from "../draft/submit-once";
import type { Viewer } from "../gate";

/** The form of a student among those that are kept, and the kind of its drafts. */
export const STUDENT_DRAFT = "student-form";

/** A student who was added. */
export interface AddedStudent {
  readonly kind: "added";
  readonly studentId: string;
}

/** Adds a student from a form, once; a refused form is kept with what is wrong in it. */
export function addStudent(viewer: Viewer, data: FormData): AddedStudent | Refused {
  return submitOnce<AddedStudent>(viewer, STUDENT_DRAFT, data, () => enterStudent(viewer, data));
}

/**
 * Where adding leads: to the student, or first to the pause where something hurts. The answer goes no further than the form: what
 * hurts belongs to the coach in charge and the family, and is recorded with its days.
 */
export function afterAdding({ roles }: Viewer, studentId: string, data: FormData): string {
  const page = `/students/${studentId}`;
  if (data.get("pain") !== "yes") return page;
  return `${page}/events/new?kind=${roles.includes("coach") ? "injury" : "pause"}`;
}

function enterStudent(viewer: Viewer, data: FormData): AddedStudent | Refused {
  const { words } = viewer;
  const parsed = parseStudentForm(data, {
    today: viewer.today,
    ownConsentAge: viewer.academy.ownConsentAge,
  });
  if (parsed.kind === "issues") {
    const errors = sayFieldIssues(words, parsed.issues);
    const refusal = words.say("student-form.refusal", { problems: Object.keys(errors).length });
    return { kind: "refused", draftId: keepFormDraft(viewer, STUDENT_DRAFT, data, errors, refusal) };
  }
  const { alias, birthYear, hand, zone, clubs, language, consents } = parsed.value;
  const student = { id: randomUUID(), alias, birthYear, hand, zone, clubs, language };
  const stamp = { now: instantOf(viewer.academy), newId: randomUUID };
  const made = insertStudent(viewer.db, viewer.scope, student, consents, stamp);
  if (made.kind === "inserted") return { kind: "added", studentId: made.studentId };
  const errors = { alias: words.say("student-form.taken") };
  const refusal = words.say("student-form.refusal", { problems: 1 });
  return { kind: "refused", draftId: keepFormDraft(viewer, STUDENT_DRAFT, data, errors, refusal) };
}
