import { readAssignmentLog, readDrills } from "@/db/read/drills";
import { readStudent } from "@/db/read/students";
import { buildDrillPage, buildDrillsPage, type DrillsSource } from "@/lib/report/build-drills";
import type { FormModel } from "@/lib/report/form-model";
import type { HappenPage } from "@/lib/report/happen-model";
import { linkTables } from "../archive/table-links";
import { findFormDraft } from "../draft/form-draft";
import { withKeep } from "../draft/with-keep";
import type { StudentViewer } from "../gate";
import { DRILL_FORM, DRILL_STOP, drillDraft, findAssignment, stopDraft } from "./drill-desk";
import { buildDrillForm, buildStopForm } from "./drill-form";
import { buildBackForm } from "./event-form";
import { dayOfInstant } from "./load-events";
import { loadAcademyRules } from "./student-record";

function sourceOf(viewer: StudentViewer): DrillsSource {
  return {
    student: readStudent(viewer.db, viewer.student),
    drills: readAssignmentLog(viewer.db, viewer.student),
    fundamentals: loadAcademyRules(viewer.db, viewer.scope, viewer.academy).fundamentals,
    today: viewer.today,
    dayOf: dayOfInstant(viewer),
  };
}

/** Every drill given to a student. */
export function loadDrills(viewer: StudentViewer): HappenPage {
  const which = { student: viewer.student.studentId };
  return linkTables(viewer.words, "drills", which, buildDrillsPage(viewer.words, sourceOf(viewer)));
}

/** One given drill with what can be done to it. */
export interface DrillRoom {
  readonly page: HappenPage;
  /** Null: it doesn't run. */
  readonly stop: FormModel | null;
  readonly back: FormModel;
}

/** The page of one given drill; null: there is none of that name. */
export function loadDrill(
  viewer: StudentViewer,
  assignmentId: string,
  draftId: string,
  dropped?: string,
): DrillRoom | null {
  const { words, db, scope } = viewer;
  const given = findAssignment(viewer, assignmentId);
  if (given === null) return null;
  const drill = readDrills(db, scope).find((each) => each.id === given.drillId) ?? { how: "", cautions: "" };
  const { studentId } = viewer.student;
  const draft = findFormDraft(viewer, stopDraft(assignmentId), draftId);
  return {
    page: buildDrillPage(words, { ...sourceOf(viewer), given, drill }),
    stop:
      given.state === "stands" && given.end === null
        ? withKeep(viewer, buildStopForm(words, { studentId, assignmentId, today: viewer.today, draft }), {
            ...{ form: DRILL_STOP, studentId, of: assignmentId },
            ...{ draftId, dropped },
          })
        : null,
    back: buildBackForm(words, "drill", given.state, [
      { name: "studentId", value: studentId },
      { name: "assignmentId", value: assignmentId },
    ]),
  };
}

/** What the address of the form says. */
export interface AskedDrill {
  readonly draft?: string;
  readonly dropped?: string;
  readonly instead?: string;
}

/** The form that gives a drill, or the one that stands in for a wrong one. */
export function loadDrillForm(viewer: StudentViewer, draftId: string, asked: AskedDrill): FormModel {
  const { words, db, scope, student } = viewer;
  const { studentId } = student;
  const draft = findFormDraft(viewer, drillDraft(studentId), draftId);
  const typed = new Map(draft?.entries);
  const form = buildDrillForm(words, {
    alias: readStudent(db, student).alias,
    today: viewer.today,
    library: readDrills(db, scope),
    fundamentals: loadAcademyRules(db, scope, viewer.academy).fundamentals,
    instead: findAssignment(viewer, typed.get("instead") ?? asked.instead ?? ""),
    draft,
  });
  return withKeep(viewer, form, { form: DRILL_FORM, studentId, draftId, dropped: asked.dropped });
}
