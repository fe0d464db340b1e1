import { randomUUID } from "node:crypto";
import { inTransaction } from "@/db/client";
import { readAssignmentLog, readDrills } from "@/db/read/drills";
import { insertAssignment, insertDrill, updateAssignmentEnd, updateAssignmentTakenBack } from "@/db/write/drills";
import type { AssignmentRecord } from "@/lib/domain/drill-record";
import { type EnteredDrill, parseDrillForm, parseDrillStop } from "@/lib/ingest/parse-drill-form";
import { sayDose } from "@/lib/words/say-dose";
import { instantOf } from "../clock";
import { kindOf } from "../draft/draft-forms";
import { keepFormDraft } from "../draft/form-draft";
import { sayFieldIssues } from "../draft/say-field-issues";
import { type Refused, submitOnce } from "../draft/submit-once";
import type { StudentViewer } from "../gate";
import { loadAcademyRules } from "./student-record";

/** The words under which the form of a drill is kept, and the one that stops it. */
export const DRILL_FORM = "drill-form";
export const DRILL_STOP = "drill-stop";

/** The kinds under which refused forms are kept. */
export function drillDraft(studentId: string): string {
  return kindOf(DRILL_FORM, studentId);
}
export function stopDraft(assignmentId: string): string {
  return kindOf(DRILL_STOP, "", assignmentId);
}

/** A drill given to the student, taken back or not; null: there is none of that name. */
export function findAssignment({ db, student }: StudentViewer, assignmentId: string): AssignmentRecord | null {
  return readAssignmentLog(db, student).find((each) => each.id === assignmentId) ?? null;
}

/** The drill of the library that is meant, added to it where it is new. */
function drillOf({ db, scope }: StudentViewer, { drill }: EnteredDrill) {
  if (drill.kind === "new") {
    const { kind: _kind, ...added } = { ...drill, id: randomUUID() };
    insertDrill(db, scope, added);
    return added;
  }
  const known = readDrills(db, scope).find((each) => each.id === drill.id);
  if (!known) throw new Error(`no such drill: ${drill.id}`);
  return known;
}

interface Given {
  readonly kind: "given";
  readonly assignmentId: string;
}

/** Gives a drill, once; one that stands in for a wrong one takes that back in the same moment. A refused form is kept. */
export function giveDrill(viewer: StudentViewer, data: FormData): Given | Refused {
  return submitOnce<Given>(viewer, drillDraft(viewer.student.studentId), data, () => enterDrill(viewer, data));
}

function enterDrill(viewer: StudentViewer, data: FormData): Given | Refused {
  const { words, db, student, scope } = viewer;
  const { fundamentals } = loadAcademyRules(db, scope, viewer.academy);
  const parsed = parseDrillForm(data, {
    today: viewer.today,
    library: readDrills(db, scope),
    fundamentals: fundamentals.map((each) => each.id),
  });
  const wrong = findAssignment(viewer, String(data.get("instead") ?? ""));
  const refuse = (errors: Readonly<Record<string, string>>, refusal: string): Refused => ({
    kind: "refused",
    draftId: keepFormDraft(viewer, drillDraft(student.studentId), data, errors, refusal),
  });
  if (parsed.kind === "issues") {
    const errors = sayFieldIssues(words, parsed.issues);
    return refuse(errors, words.say("drill-form.refusal", { problems: Object.keys(errors).length }));
  }
  if (wrong?.state === "taken-back") return refuse({}, words.say("event-form.instead-gone"));
  const assignmentId = randomUUID();
  const by = { who: viewer.name, now: instantOf(viewer.academy) };
  inTransaction(db, () => {
    if (wrong !== null) updateAssignmentTakenBack(db, student, { assignmentId: wrong.id, wish: "take", now: by.now });
    const { id: drillId, fundamentalId } = drillOf(viewer, parsed.value);
    const { start, dose } = parsed.value;
    const given = { id: assignmentId, drillId, fundamentalId, start, end: null, dose: sayDose(words, dose) };
    insertAssignment(db, student, given, by);
  });
  return { kind: "given", assignmentId };
}

interface Stopped {
  readonly kind: "stopped" | "not-running";
}

/** Stops a drill that runs, once; a refused form is kept. */
export function stopDrill(viewer: StudentViewer, assignmentId: string, data: FormData): Stopped | Refused {
  return submitOnce<Stopped>(viewer, stopDraft(assignmentId), data, () => enterStop(viewer, assignmentId, data));
}

function enterStop(viewer: StudentViewer, assignmentId: string, data: FormData): Stopped | Refused {
  const { words, db, student } = viewer;
  const given = findAssignment(viewer, assignmentId);
  if (given === null || given.state === "taken-back" || given.end !== null) return { kind: "not-running" };
  const parsed = parseDrillStop(data, { today: viewer.today, start: given.start });
  if (parsed.kind === "issues") {
    const errors = sayFieldIssues(words, parsed.issues);
    const refusal = words.say("drill-stop.refusal");
    const draftId = keepFormDraft(viewer, stopDraft(assignmentId), data, errors, refusal, student.studentId);
    return { kind: "refused", draftId };
  }
  const made = updateAssignmentEnd(db, student, { assignmentId, ...parsed.value });
  return { kind: made.kind === "updated" ? "stopped" : "not-running" };
}

/** Takes a given drill back, or puts it back. */
export function moveDrillBack(
  { db, student, academy }: StudentViewer,
  assignmentId: string,
  wish: "take" | "put",
): "updated" | "unchanged" {
  return updateAssignmentTakenBack(db, student, { assignmentId, wish, now: instantOf(academy) }).kind;
}
