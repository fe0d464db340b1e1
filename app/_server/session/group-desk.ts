import { randomUUID } from "node:crypto";
import { readGroupSessions } from "@/db/read/group-sessions";
import { readStudents } from "@/db/read/students";
import { insertGroupSessions } from "@/db/write/group-sessions";
import type { Hand } from "@/lib/domain/handedness";
import type { StudentScope } from "@/lib/domain/scope";
import { fieldText } from "@/lib/ingest/field-issue";
import { parseGroupForm } from "@/lib/ingest/parse-group-form";
import type { CaptureAnswer } from "@/lib/report/capture-answer-model";
import { currentInstant } from "../clock";
import { standingsOf } from "../consent/consent-gate";
import { isDraftId } from "../draft/draft-forms";
import { type FormDraft, findFormDraft, keepFormDraft } from "../draft/form-draft";
import { sayFieldIssues } from "../draft/say-field-issues";
import { keepLooked, type Refused, submitOnce } from "../draft/submit-once";
import { admitToStudent, type Viewer } from "../gate";
import { loadRules } from "../roster/load-verdicts";
import { loadAcademyRules } from "../season/student-record";
import { answerFor } from "./capture-desk";
import { groupNote, recordNote } from "./note-desk";

/** The form of a group session among those that are kept. */
export const GROUP_FORM = "group-form";

/** A student chosen for a group, and whether there is a consent to measure. */
export interface ChosenStudent {
  readonly id: string;
  readonly alias: string;
  readonly birthYear: number | null;
  readonly hand: Hand;
  readonly scope: StudentScope;
  readonly consent: "given" | "missing";
}

/** The students of the academy among those ids, in the order of the aliases. */
export function chosenStudents(viewer: Viewer, ids: readonly string[]): readonly ChosenStudent[] {
  const wished = new Set(ids);
  const standings = standingsOf(viewer, "measure");
  return readStudents(viewer.db, viewer.scope).flatMap(({ id, alias, birthYear, hand }) => {
    const scope = wished.has(id) ? admitToStudent(viewer, id) : null;
    if (scope === null) return [];
    const given = standings.get(id)?.kind === "given";
    return [{ id, alias, birthYear, hand, scope, consent: given ? "given" : "missing" } as const];
  });
}

/** A refused form of a group; null: there is none. */
export function findGroupDraft(viewer: Viewer, id: string | undefined): FormDraft | null {
  return findFormDraft(viewer, GROUP_FORM, id);
}

/** Keeps the form as it stands, so that a page without scripts can answer; returns the draft's id. */
export function keepGroup(viewer: Viewer, data: FormData): string {
  return keepLooked(viewer, GROUP_FORM, data);
}

/** What each film shows, for the group's hand; where both are in it, as right-handers have it. */
export function answerGroup(viewer: Viewer, data: FormData): readonly CaptureAnswer[] {
  const students = chosenStudents(viewer, idsOf(data));
  const left = students.length > 0 && students.every(({ hand }) => hand === "left");
  const answers = answerFor(viewer, left ? "left" : "right", data);
  if (new Set(students.map(({ hand }) => hand)).size < 2) return answers;
  return answers.map((answer) => ({ ...answer, notes: [...answer.notes, viewer.words.say("group-form.both-hands")] }));
}

/** The ids that a form of a group names. */
export function idsOf(data: FormData): readonly string[] {
  return fieldText(data, "students").split(",").filter(Boolean);
}

/** The sessions of a group that were saved. */
export interface AddedGroup {
  readonly kind: "added";
  readonly groupId: string;
}

/** Adds the sessions of a group from a form, once, all or none, and judges anew; a refused form is kept with what is wrong. */
export async function addGroup(viewer: Viewer, data: FormData): Promise<AddedGroup | Refused> {
  const outcome = submitOnce<AddedGroup>(viewer, GROUP_FORM, data, () => enterGroup(viewer, data));
  if (outcome.kind === "added") await loadRules(viewer);
  return outcome;
}

function enterGroup(viewer: Viewer, data: FormData): AddedGroup | Refused {
  const { words, db } = viewer;
  const chosen = chosenStudents(viewer, idsOf(data));
  const students = chosen.filter((student) => student.consent === "given");
  // The form's own id names the occasion, so that it can't be saved as two.
  const wished = fieldText(data, "draft");
  const groupId = isDraftId(wished) ? wished : randomUUID();
  const { fundamentals, grouping } = loadAcademyRules(db, viewer.scope, viewer.academy);
  const context = { today: viewer.today, fundamentals, grouping, reader: viewer.name, students, groupId };
  const parsed = parseGroupForm(data, context);
  const issues = parsed.kind === "issues" ? [...parsed.issues] : [];
  if (chosen.length < new Set(idsOf(data)).size) issues.unshift({ field: "students", code: "gone", args: {} });
  if (students.length < chosen.length && fieldText(data, "leaveOut") !== "yes")
    issues.unshift({ field: "leaveOut", code: "leave-out", args: {} });
  if (issues.length > 0 || parsed.kind === "issues") {
    const errors = sayFieldIssues(words, issues, grouping);
    const nobody = issues.find((issue) => issue.field === "students");
    const refusal = nobody
      ? words.say(`form.issue.${nobody.code}`)
      : words.say("session-form.refusal", { problems: Object.keys(errors).length });
    return { kind: "refused", draftId: keepFormDraft(viewer, GROUP_FORM, data, errors, refusal) };
  }
  const scopes = new Map(students.map((student) => [student.id, student.scope]));
  const parts = parsed.value.flatMap(({ studentId, session }) => {
    const scope = scopes.get(studentId);
    return scope ? [{ scope, session }] : [];
  });
  const made = insertGroupSessions(db, groupId, parts, { now: currentInstant(), newId: randomUUID });
  if (made === "inserted")
    for (const { studentId, sessionId, groupId: of } of readGroupSessions(db, viewer.scope))
      if (of === groupId) recordNote(viewer, sessionId, data, groupNote(studentId));
  return { kind: "added", groupId };
}
