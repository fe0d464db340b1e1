import { randomUUID } from "node:crypto";
import { readStudent } from "@/db/read/students";
import { insertSession } from "@/db/write/sessions";
import { parseSessionForm } from "@/lib/ingest/parse-session-form";
import { currentInstant } from "../clock";
import { whyNotRecorded } from "../consent/consent-gate";
import { kindOf } from "../draft/draft-forms";
import { keepFormDraft } from "../draft/form-draft";
import { sayFieldIssues } from "../draft/say-field-issues";
import { type Refused, submitOnce } from "../draft/submit-once";
import type { StudentViewer } from "../gate";
import { loadRules } from "../roster/load-verdicts";
import { loadAcademyRules } from "../season/student-record";
import { recordNote, singleNote } from "./note-desk";

/** The form of a session among those that are kept. */
export const SESSION_FORM = "session-form";

/** The kind under which a form of a session is kept. */
export function sessionDraft(studentId: string): string {
  return kindOf(SESSION_FORM, studentId);
}

/** A session that was saved. */
export interface AddedSession {
  readonly kind: "added";
  readonly sessionId: string;
}

/** Adds a session from a form, once, and judges anew; a refused form is kept with what is wrong in it. */
export async function addSession(viewer: StudentViewer, data: FormData): Promise<AddedSession | Refused> {
  const outcome = saveSession(viewer, data);
  if (outcome.kind === "added") await loadRules(viewer);
  return outcome;
}

/** The same without judging: when it returns, the session is on the disk. */
export function saveSession(viewer: StudentViewer, data: FormData): AddedSession | Refused {
  const kind = sessionDraft(viewer.student.studentId);
  return submitOnce<AddedSession>(viewer, kind, data, () => enterSession(viewer, data));
}

function enterSession(viewer: StudentViewer, data: FormData): AddedSession | Refused {
  const { words, db, student } = viewer;
  const refuse = (errors: Readonly<Record<string, string>>, refusal: string): Refused => ({
    kind: "refused",
    draftId: keepFormDraft(viewer, sessionDraft(student.studentId), data, errors, refusal),
  });
  const why = whyNotRecorded(viewer, student);
  if (why !== null) return refuse({}, why);
  const { fundamentals, grouping } = loadAcademyRules(db, viewer.scope, viewer.academy);
  const { birthYear, hand } = readStudent(db, student);
  const parsed = parseSessionForm(data, {
    today: viewer.today,
    fundamentals,
    grouping,
    birthYear,
    hand,
    reader: viewer.name,
  });
  if (parsed.kind === "issues") {
    const errors = sayFieldIssues(words, parsed.issues, grouping);
    return refuse(errors, words.say("session-form.refusal", { problems: Object.keys(errors).length }));
  }
  const stamp = { now: currentInstant(), newId: randomUUID, batchId: null };
  const made = insertSession(db, student, parsed.value, stamp);
  if (made.kind === "exists") return refuse({}, words.say("session-form.exists"));
  recordNote(viewer, made.sessionId, data, singleNote(student.studentId));
  return { kind: "added", sessionId: made.sessionId };
}
