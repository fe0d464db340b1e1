import { readSessions } from "@/db/read/sessions";
import { readStudent, readStudentsHere } from "@/db/read/students";
import type { ClubGroup } from "@/lib/domain/club-group";
import { type ClubGrouping, currentGroups } from "@/lib/domain/club-grouping";
import { usualConsent } from "@/lib/domain/usual-consent";
import type { FormModel, TextPage } from "@/lib/report/form-model";
import { opensPage } from "../access/find-row";
import { askedToday, warnBeforehand } from "../consent/consent-gate";
import { findFormDraft } from "../draft/form-draft";
import { withKeep } from "../draft/with-keep";
import type { StudentViewer, Viewer } from "../gate";
import { STUDENT_DRAFT } from "../season/student-desk";
import { buildStudentForm } from "../season/student-form";
import { loadAcademyRules } from "../season/student-record";
import { answerDraft } from "./capture-desk";
import { loadGridSource } from "./grid-desk";
import { answerDraftNote, singleNote } from "./note-desk";
import { SESSION_FORM, sessionDraft } from "./session-desk";
import { buildSessionForm } from "./session-form";

/** The group that a first session begins with, where the academy has it: most are filmed with a middle iron. */
export const USUAL_GROUP = "iron";

/** The first of some ids that is a club group of the academy now; null: none is. */
export function chosenGroup(grouping: ClubGrouping, ids: readonly (string | undefined)[]): ClubGroup | null {
  const groups = currentGroups(grouping);
  return ids.flatMap((id) => groups.find((group) => group.id === id)?.id ?? [])[0] ?? null;
}

export function loadStudentForm(viewer: Viewer, draftId: string, dropped?: string): FormModel {
  const draft = findFormDraft(viewer, STUDENT_DRAFT, draftId);
  const form = buildStudentForm(viewer.words, draft, draftId, {
    zone: viewer.academy.zone,
    usualUntil: usualConsent([], ["measure"], askedToday(viewer, { birthYear: null })).until,
  });
  return withKeep(viewer, form, { form: STUDENT_DRAFT, studentId: "", draftId, dropped });
}

export async function loadSessionForm(viewer: StudentViewer, draftId: string, dropped?: string): Promise<FormModel> {
  const { studentId } = viewer.student;
  const draft = findFormDraft(viewer, sessionDraft(studentId), draftId);
  const { grouping } = loadAcademyRules(viewer.db, viewer.scope, viewer.academy);
  const typed = draft?.entries.findLast(([name]) => name === "clubGroup")?.[1];
  const last = readSessions(viewer.db, viewer.student).at(-1)?.clubGroup;
  const clubGroup = chosenGroup(grouping, [typed]) ?? last ?? USUAL_GROUP;
  const form = buildSessionForm(viewer.words, {
    alias: readStudent(viewer.db, viewer.student).alias,
    grid: await loadGridSource(viewer, clubGroup),
    grouping,
    clubGroup,
    today: viewer.today,
    draft,
    draftId,
    answers: answerDraft(viewer, draft),
    note: answerDraftNote(viewer, draft, singleNote(studentId)),
  });
  const told = { ...form, explains: warnBeforehand(viewer, viewer.student) ?? form.explains };
  return withKeep(viewer, told, { form: SESSION_FORM, studentId, draftId, dropped });
}

/** The page that asks whose session is recorded. */
export function loadRecordPage(viewer: Viewer): TextPage {
  const { words } = viewer;
  const students = readStudentsHere(viewer.db, viewer.scope);
  return {
    title: words.say("record.title"),
    lede: words.say("record.lede"),
    parts: [
      {
        margin: words.say("record.part"),
        heading: words.say("roster.lede.students", { students: students.length }),
        paragraphs: students.length === 0 ? [words.say("record.none")] : [],
        links: [
          ...students.map((student) => ({ href: `/students/${student.id}/sessions/new`, label: student.alias })),
          ...(opensPage("/students/new", viewer.roles)
            ? [{ href: "/students/new", label: words.say("student-form.heading") }]
            : []),
        ],
      },
      {
        margin: words.say("record.group"),
        heading: words.say("record.group.heading"),
        paragraphs: [words.say("record.group.text")],
        links: [
          { href: "/record/group", label: words.say("record.group.open") },
          { href: "/record/group/saved", label: words.say("record.group.list") },
        ],
      },
    ],
  };
}
