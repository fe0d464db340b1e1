import { randomUUID } from "node:crypto";
import { inTransaction } from "@/db/client";
import { readAssignmentLog, readDrills } from "@/db/read/drills";
import { insertAssignment, insertDrill, updateAssignmentEnd, updateAssignmentTakenBack } from "@/db/write/drills";
import { dayNumber } from "@/lib/domain/calendar-day";
import type { AssignmentRecord } from "@/lib/domain/drill-record";
import { type EnteredDrill, parseDrillForm, parseDrillStop } from "@/lib/ingest/parse-drill-form";
import { proposeDose } from "@/lib/report/propose-drill";
import { instantOf } from "../clock";
import { whyNotRecorded } from "../consent/consent-gate";
import { kindOf } from "../draft/draft-forms";
import { keepFormDraft } from "../draft/form-draft";
import { sayFieldIssues } from "../draft/say-field-issues";
import { keepLooked, type Refused, submitOnce } from "../draft/submit-once";
import { libraryFor, proposeSource, whyStop } from "../drill/proposals";
import type { StudentViewer } from "../gate";
import { doseEntries } from "./drill-form";
import { loadAcademyRules } from "./student-record";
import { endWaiting } from "./waiting-desk";

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

/**
 * The drill of the library that is meant; a new one is added to it, with the figures of this dose as its usual one. What was
 * written of it in words is about the student, and the library is everybody's.
 */
function drillOf({ db, scope }: StudentViewer, { drill, dose, start, remeasureOn }: EnteredDrill) {
  if (drill.kind === "new") {
    const { kind: _kind, ...added } = { ...drill, id: randomUUID() };
    insertDrill(db, scope, {
      ...added,
      reps: dose.reps,
      minutesADay: dose.minutes,
      daysAWeek: dose.daysAWeek,
      remeasureDays: remeasureOn === null ? null : dayNumber(remeasureOn) - dayNumber(start),
    });
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
    library: libraryFor(viewer),
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
  const why = wrong === null ? whyNotRecorded(viewer, student) : null;
  if (why !== null) return refuse({}, why);
  if (wrong?.state === "taken-back") return refuse({}, words.say("event-form.instead-gone"));
  if (wrong === null && data.get("goOn") !== "yes" && whyStop(viewer).length > 0)
    return refuse({ goOn: words.say("stop-first.missing") }, words.say("stop-first.refusal"));
  const assignmentId = randomUUID();
  const by = { who: viewer.name, now: instantOf(viewer.academy) };
  inTransaction(db, () => {
    if (wrong !== null) updateAssignmentTakenBack(db, student, { assignmentId: wrong.id, wish: "take", now: by.now });
    const { id: drillId, fundamentalId } = drillOf(viewer, parsed.value);
    const { start, dose, remeasureOn } = parsed.value;
    endWaiting(viewer, fundamentalId, start);
    const { reps, minutes: minutesADay, daysAWeek, stop: stopRule } = dose;
    const asked = { reps, minutesADay, daysAWeek, stopRule, remeasureOn };
    insertAssignment(
      db,
      student,
      { id: assignmentId, drillId, fundamentalId, start, end: null, dose: dose.words, ...asked },
      by,
    );
  });
  return { kind: "given", assignmentId };
}

/**
 * Keeps a form as it stands, with the dose in which the drill that it names is last or usually given. Where nothing is known of
 * it, only the day to be measured again is filled in; words of the coach's own stay where there are none to put in their place.
 *
 * @returns its id
 */
export function fillDose(viewer: StudentViewer, data: FormData): string {
  const source = proposeSource(viewer);
  const drill = source.library.find(({ id }) => id === data.get("drill"));
  const dose = proposeDose(viewer.words, source, drill, String(data.get("start") ?? ""));
  const isFigure = (name: string): boolean => name !== "words" && name !== "stop";
  for (const [name, value] of Object.entries(doseEntries(dose)))
    if (value !== "" || (dose.by !== "none" && isFigure(name))) data.set(name, value);
  return keepLooked(viewer, drillDraft(viewer.student.studentId), data);
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
