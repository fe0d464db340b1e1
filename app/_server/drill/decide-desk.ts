import { insertDrillDecision } from "@/db/write/drill-decisions";
import type { DrillDecision } from "@/lib/domain/drill-decision";
import type { AssignmentRecord } from "@/lib/domain/drill-record";
import { parseDrillDecision } from "@/lib/ingest/parse-drill-form";
import { instantOf } from "../clock";
import { whyNotRecorded } from "../consent/consent-gate";
import { kindOf } from "../draft/draft-forms";
import { keepFormDraft } from "../draft/form-draft";
import { sayFieldIssues } from "../draft/say-field-issues";
import { type Refused, submitOnce } from "../draft/submit-once";
import type { StudentViewer } from "../gate";
import { findAssignment } from "../season/drill-desk";
import { whyStop } from "./proposals";

/** The word under which the form is kept. */
export const DECISION_FORM = "decision-form";

/** The kind under which a refused form is kept. */
export function decisionDraft(assignmentId: string): string {
  return kindOf(DECISION_FORM, "", assignmentId);
}

interface Decided {
  readonly kind: "decided";
  readonly decision: DrillDecision;
  readonly fundamentalId: string;
}

/** Whether a drill still runs. */
export function runs(given: AssignmentRecord | null): given is AssignmentRecord {
  return given !== null && given.state === "stands" && given.end === null;
}

/** Decides about a drill that runs, once; a refused form is kept. */
export function decideDrill(viewer: StudentViewer, assignmentId: string, data: FormData): Decided | Refused {
  return submitOnce<Decided>(viewer, decisionDraft(assignmentId), data, () =>
    enterDecision(viewer, assignmentId, data),
  );
}

function enterDecision(viewer: StudentViewer, assignmentId: string, data: FormData): Decided | Refused {
  const { words, db, student, today } = viewer;
  const refuse = (errors: Readonly<Record<string, string>>, refusal: string): Refused => ({
    kind: "refused",
    draftId: keepFormDraft(viewer, decisionDraft(assignmentId), data, errors, refusal, student.studentId),
  });
  const given = findAssignment(viewer, assignmentId);
  if (!runs(given)) return refuse({}, words.say("decision-form.not-running"));
  const parsed = parseDrillDecision(data, { today });
  if (parsed.kind === "issues") {
    const errors = sayFieldIssues(words, parsed.issues);
    return refuse(errors, words.say("decision-form.refusal", { problems: Object.keys(errors).length }));
  }
  const { decision, why, next } = parsed.value;
  // A drill may always be ended; that it goes on is recorded only with a consent.
  const whyNot = next === null ? null : whyNotRecorded(viewer, student);
  if (whyNot !== null) return refuse({}, whyNot);
  if (next !== null && data.get("goOn") !== "yes" && whyStop(viewer).length > 0)
    return refuse({ goOn: words.say("decision-form.go-on.missing") }, words.say("decision-form.stop-first"));
  const row = {
    assignmentId,
    decision,
    why,
    next,
    day: today,
    who: viewer.name,
    recordedAt: instantOf(viewer.academy),
  };
  const made = insertDrillDecision(db, student, row);
  if (made === "unchanged") return refuse({}, words.say("decision-form.not-running"));
  return { kind: "decided", decision, fundamentalId: given.fundamentalId };
}

/** Where a decision leads: to the form of the next drill, to the goal, or back to the drill. */
export function pageAfter(studentId: string, assignmentId: string, { decision, fundamentalId }: Decided): string {
  const page = `/students/${studentId}`;
  if (decision === "change-drill")
    return `${page}/drills/new?${new URLSearchParams({ for: fundamentalId, after: assignmentId })}`;
  if (decision === "change-goal") return `${page}/${fundamentalId}/goal`;
  return `${page}/drills/${encodeURIComponent(assignmentId)}`;
}
