import { randomUUID } from "node:crypto";
import { insertStudent } from "@/db/write/students";
import { parseStudentForm } from "@/lib/ingest/parse-student-form";
import { currentInstant } from "./clock";
import { keepFormDraft } from "./form-draft";
import type { Viewer } from "./gate";
import { sayFieldIssues } from "./say-field-issues";

/** The kind under which a refused form of a student is kept. */
export const STUDENT_DRAFT = "student-form";

/** Adds a student from a form; a refused form is kept with what is wrong in it. */
export function addStudent(
  viewer: Viewer,
  data: FormData,
): { readonly kind: "added"; readonly studentId: string } | { readonly kind: "refused"; readonly draftId: string } {
  const { words } = viewer;
  const parsed = parseStudentForm(data, { today: viewer.today });
  if (parsed.kind === "issues") {
    const errors = sayFieldIssues(words, parsed.issues);
    const refusal = words.say("student-form.refusal", { problems: Object.keys(errors).length });
    return { kind: "refused", draftId: keepFormDraft(viewer, STUDENT_DRAFT, data, errors, refusal) };
  }
  const { alias, birthYear, hand, zone, clubs, consentGivenBy } = parsed.value;
  const consent = {
    kind: "measure",
    givenBy: consentGivenBy,
    from: viewer.today,
    until: null,
    withdrawnOn: null,
  } as const;
  const stamp = { now: currentInstant(), newId: randomUUID };
  const made = insertStudent(
    viewer.db,
    viewer.scope,
    { id: randomUUID(), alias, birthYear, hand, zone, clubs },
    consent,
    stamp,
  );
  if (made.kind === "inserted") return { kind: "added", studentId: made.studentId };
  const errors = { alias: words.say("student-form.taken") };
  const refusal = words.say("student-form.refusal", { problems: 1 });
  return { kind: "refused", draftId: keepFormDraft(viewer, STUDENT_DRAFT, data, errors, refusal) };
}
