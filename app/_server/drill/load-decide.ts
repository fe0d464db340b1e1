import { readDrillDecisions } from "@/db/read/drill-decisions";
import { readStudent } from "@/db/read/students";
import { buildDecidePage } from "@/lib/report/build-decide";
import { buildDrillSince } from "@/lib/report/build-drill-since";
import type { FormModel } from "@/lib/report/form-model";
import type { HappenPage } from "@/lib/report/happen-model";
import { proposeDose } from "@/lib/report/propose-drill";
import { linkTables } from "../archive/table-links";
import { daysHere } from "../clock";
import { findFormDraft } from "../draft/form-draft";
import { withKeep } from "../draft/with-keep";
import type { StudentViewer } from "../gate";
import { findAssignment } from "../season/drill-desk";
import { DECISION_FORM, decisionDraft, runs } from "./decide-desk";
import { buildDecideForm } from "./decide-form";
import { loadDrillSince } from "./drill-since";
import { proposeSource, whyStop } from "./proposals";

/** What a coach sees before deciding about a drill, and the form; no form where it doesn't run. */
export interface DecideRoom {
  readonly page: HappenPage;
  readonly form: FormModel | null;
}

/** The page on which is decided about a drill; null: there is none of that name. */
export async function loadDecide(
  viewer: StudentViewer,
  assignmentId: string,
  draftId: string,
  dropped?: string,
): Promise<DecideRoom | null> {
  const { words, db, student, today } = viewer;
  const given = findAssignment(viewer, assignmentId);
  if (given === null) return null;
  const made = buildDecidePage(words, {
    student: readStudent(db, student),
    given,
    today,
    since: given.state === "stands" ? buildDrillSince(words, await loadDrillSince(viewer, given)) : null,
    decisions: readDrillDecisions(db, student),
    dayOf: daysHere(viewer.academy),
  });
  const { studentId } = student;
  // Its one table is the drill's page's own.
  const page = linkTables(words, "drill", { student: studentId, drill: assignmentId }, made);
  if (!runs(given)) return { page, form: null };
  const source = proposeSource(viewer);
  const drill = source.library.find(({ id }) => id === given.drillId);
  const form = buildDecideForm(words, {
    studentId,
    assignmentId,
    next: proposeDose(words, source, drill, today, given).remeasureOn,
    rest: source.rest,
    stop: whyStop(viewer),
    draft: findFormDraft(viewer, decisionDraft(assignmentId), draftId),
  });
  return { page, form: withKeep(viewer, form, { form: DECISION_FORM, studentId, of: assignmentId, draftId, dropped }) };
}
