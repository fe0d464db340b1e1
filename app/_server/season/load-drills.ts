import { readDrillDecisions } from "@/db/read/drill-decisions";
import { readAssignmentLog, readDrills } from "@/db/read/drills";
import { readStudent } from "@/db/read/students";
import type { AssignmentRecord } from "@/lib/domain/drill-record";
import { describedOn, parseEarlierDrills } from "@/lib/domain/drill-version";
import { buildDrillSince } from "@/lib/report/build-drill-since";
import { buildDrillPage, buildDrillsPage, type DrillsSource, type DrillWords } from "@/lib/report/build-drills";
import type { FormModel } from "@/lib/report/form-model";
import type { HappenPage } from "@/lib/report/happen-model";
import { type DrillProposal, proposeDrill } from "@/lib/report/propose-drill";
import { linkTables } from "../archive/table-links";
import { daysHere } from "../clock";
import { findFormDraft } from "../draft/form-draft";
import { withKeep } from "../draft/with-keep";
import { loadDrillSince, practiceByDrill } from "../drill/drill-since";
import { proposeSource, whyStop } from "../drill/proposals";
import { restDaysOf } from "../drill/rest-days";
import { studentLot } from "../fair/lot-desk";
import type { StudentViewer } from "../gate";
import { DRILL_FORM, DRILL_STOP, drillDraft, findAssignment, stopDraft } from "./drill-desk";
import { buildDrillForm, buildStopForm } from "./drill-form";
import { buildBackForm } from "./event-form";
import { loadAcademyRules } from "./student-record";
import { loadWaiting } from "./waiting-desk";

function sourceOf(viewer: StudentViewer): DrillsSource {
  return {
    student: readStudent(viewer.db, viewer.student),
    drills: readAssignmentLog(viewer.db, viewer.student),
    practice: practiceByDrill(viewer),
    fundamentals: loadAcademyRules(viewer.db, viewer.scope, viewer.academy).fundamentals,
    today: viewer.today,
    dayOf: daysHere(viewer.academy),
  };
}

/** Every drill given to a student, and what waits without one on purpose. */
export function loadDrills(viewer: StudentViewer): HappenPage {
  const which = { student: viewer.student.studentId };
  const page = buildDrillsPage(viewer.words, sourceOf(viewer));
  const waiting = loadWaiting(viewer);
  const parts = waiting === null ? page.parts : [...page.parts, waiting];
  return linkTables(viewer.words, "drills", which, { ...page, parts });
}

/** One given drill with what can be done to it. */
export interface DrillRoom {
  readonly page: HappenPage;
  /** Null: it doesn't run. */
  readonly stop: FormModel | null;
  readonly back: FormModel;
}

/** How a given drill goes now, and how it went on the day on which it was given, where that was something else. */
function wordsOf({ db, scope }: StudentViewer, { drillId, start }: AssignmentRecord): DrillWords {
  const drill = readDrills(db, scope).find(({ id }) => id === drillId);
  if (drill === undefined) return { how: "", cautions: "", asGiven: null };
  const then = describedOn(drill, parseEarlierDrills(drill.earlier), start);
  const same = then.name === drill.name && then.how === drill.how;
  return { how: drill.how, cautions: drill.cautions, asGiven: same ? null : { name: then.name, how: then.how } };
}

/** The page of one given drill without its forms; null: there is none of that name. */
export async function loadDrillPage(viewer: StudentViewer, assignmentId: string): Promise<HappenPage | null> {
  const { words, db, student } = viewer;
  const given = findAssignment(viewer, assignmentId);
  if (given === null) return null;
  const page = buildDrillPage(words, {
    ...sourceOf(viewer),
    given,
    drill: wordsOf(viewer, given),
    decisions: readDrillDecisions(db, student),
    since: given.state === "stands" ? buildDrillSince(words, await loadDrillSince(viewer, given)) : null,
    rest: restDaysOf(viewer),
  });
  return linkTables(words, "drill", { student: student.studentId, drill: assignmentId }, page);
}

/** The page of one given drill with what can be done to it; null: there is none of that name. */
export async function loadDrill(
  viewer: StudentViewer,
  assignmentId: string,
  draftId: string,
  dropped?: string,
): Promise<DrillRoom | null> {
  const { words } = viewer;
  const given = findAssignment(viewer, assignmentId);
  const page = await loadDrillPage(viewer, assignmentId);
  if (given === null || page === null) return null;
  const { studentId } = viewer.student;
  const draft = findFormDraft(viewer, stopDraft(assignmentId), draftId);
  return {
    page,
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
  /** A wrong one that it stands in for. */
  readonly instead?: string;
  /** One that is given again as it was. */
  readonly again?: string;
  /** One that was ended for another. */
  readonly after?: string;
  /** The fundamental that it is for. */
  readonly for?: string;
}

/** The form that gives a drill, filled in as far as the address and what is on file say it. */
export function loadDrillForm(viewer: StudentViewer, draftId: string, asked: AskedDrill): FormModel {
  const { words, db, scope, student } = viewer;
  const { studentId } = student;
  const draft = findFormDraft(viewer, drillDraft(studentId), draftId);
  const typed = new Map(draft?.entries);
  const instead = findAssignment(viewer, typed.get("instead") ?? asked.instead ?? "");
  const ended = findAssignment(viewer, asked.after ?? "");
  const { fundamentals } = loadAcademyRules(db, scope, viewer.academy);
  // What was drawn by the lot and isn't given yet comes first, where nothing else is asked for.
  const lot = instead === null && asked.again === undefined ? studentLot(viewer) : null;
  const drawn = lot?.kind === "drawn" ? lot : null;
  const wished =
    fundamentals.find(({ id }) => id === asked.for)?.id ?? ended?.fundamentalId ?? drawn?.kept.test.fundamentalId;
  const source = proposeSource(viewer);
  const proposal = proposeDrill(words, source, {
    again: instead ?? findAssignment(viewer, asked.again ?? ""),
    fundamentalId: wished,
    drillId: typed.get("drill") ?? drawn?.drillId,
    not: ended?.drillId,
  });
  const form = buildDrillForm(words, {
    alias: readStudent(db, student).alias,
    today: viewer.today,
    fundamentals,
    proposal: instead === null ? proposal : asGiven(proposal, instead),
    fundamentalId: wished ?? "",
    rest: source.rest,
    stop: instead === null ? whyStop(viewer) : [],
    instead,
    draft,
  });
  return withKeep(viewer, form, { form: DRILL_FORM, studentId, draftId, dropped: asked.dropped });
}

/** One that stands in for a wrong one keeps the day to be measured again that this had. */
function asGiven(proposal: DrillProposal, { remeasureOn }: AssignmentRecord): DrillProposal {
  return remeasureOn === null ? proposal : { ...proposal, dose: { ...proposal.dose, remeasureOn } };
}
