import { randomUUID } from "node:crypto";
import { readAssignmentLog, readAssignments } from "@/db/read/drills";
import { readPractice, readSaidPain } from "@/db/read/practice";
import { readStudent } from "@/db/read/students";
import { insertPractice, updatePracticeVoided } from "@/db/write/practice";
import { isCalendarDay } from "@/lib/domain/calendar-day";
import { mondayOf, type Practice } from "@/lib/domain/practice";
import { parsePracticeForm } from "@/lib/ingest/parse-practice-form";
import { buildPracticePage } from "@/lib/report/build-practice";
import type { HappenPage } from "@/lib/report/happen-model";
import type { PracticeForm } from "@/lib/report/practice-form-model";
import { linkTables } from "../archive/table-links";
import { daysHere, instantOf } from "../clock";
import { warnBeforehand, whyNotRecorded } from "../consent/consent-gate";
import { isDraftId, kindOf } from "../draft/draft-forms";
import { findFormDraft, keepFormDraft } from "../draft/form-draft";
import { sayFieldIssues } from "../draft/say-field-issues";
import { type Refused, submitOnce } from "../draft/submit-once";
import { keepOf } from "../draft/with-keep";
import { type StudentViewer, seesPain } from "../gate";
import { buildPracticeForm, weekDays } from "./practice-form";

/** The form of a week among those that are kept. */
const FORM = "practice-form";

function practiceDraft(studentId: string): string {
  return kindOf(FORM, studentId);
}

/** The Monday of a week that was asked for; of this week where it isn't a day, or hasn't come. */
function weekOf({ today }: StudentViewer, wished: string | undefined): string {
  return mondayOf(wished !== undefined && isCalendarDay(wished) && wished <= today ? wished : today);
}

/** The page of practice with the form of one week. */
export function loadPractice(
  viewer: StudentViewer,
  asked: { readonly week?: string; readonly draft?: string; readonly dropped?: string },
): { readonly page: HappenPage; readonly form: PracticeForm } {
  const { words, db, student } = viewer;
  const drills = readAssignments(db, student);
  const draft = findFormDraft(viewer, practiceDraft(student.studentId), asked.draft);
  const pain = seesPain(viewer, student);
  const monday = weekOf(viewer, draft?.entries.find(([name]) => name === "week")?.[1] ?? asked.week);
  const form = buildPracticeForm(words, {
    studentId: student.studentId,
    monday,
    today: viewer.today,
    drills,
    draft,
  });
  return {
    page: linkTables(
      words,
      "practice",
      { student: student.studentId },
      buildPracticePage(words, {
        student: readStudent(db, student),
        entries: readPractice(db, student),
        drills: readAssignmentLog(db, student),
        pain: pain && readSaidPain(db, pain),
        today: viewer.today,
        dayOf: daysHere(viewer.academy),
      }),
    ),
    form: kept(viewer, { ...form, explains: warnBeforehand(viewer, student) ?? form.explains }, asked),
  };
}

/** A form without an id, as where only the page's title is asked for, isn't kept. */
function kept(
  viewer: StudentViewer,
  form: PracticeForm,
  { draft: draftId, dropped }: { readonly draft?: string; readonly dropped?: string },
): PracticeForm {
  if (!isDraftId(draftId)) return form;
  const cells = form.days.flatMap((day) => day.cells.map((cell) => ({ ...cell, options: [] })));
  const known = new Map([...cells, ...form.fields].map((field) => [field.name, field]));
  const shown = { form: FORM, studentId: viewer.student.studentId, draftId, dropped };
  return { ...form, ...keepOf(viewer, shown, form.hidden, known) };
}

function sumsOf(
  entries: readonly Practice[],
): ReadonlyMap<string, { readonly minutes: number; readonly balls: number }> {
  const sums = new Map<string, { minutes: number; balls: number }>();
  for (const entry of entries.filter((each) => each.voidedAt === null)) {
    const sum = sums.get(entry.day) ?? { minutes: 0, balls: 0 };
    sums.set(entry.day, { minutes: sum.minutes + (entry.minutes ?? 0), balls: sum.balls + (entry.balls ?? 0) });
  }
  return sums;
}

/** Logs practice of one day or several, once; a refused form is kept. */
export function logPractice(viewer: StudentViewer, data: FormData): Logged | Refused {
  return submitOnce<Logged>(viewer, practiceDraft(viewer.student.studentId), data, () => enterPractice(viewer, data));
}

interface Logged {
  readonly kind: "logged";
  readonly week: string;
}

function enterPractice(viewer: StudentViewer, data: FormData): Logged | Refused {
  const { words, db, student } = viewer;
  const week = weekOf(viewer, String(data.get("week") ?? ""));
  const refuse = (errors: Readonly<Record<string, string>>, refusal: string): Refused => ({
    kind: "refused",
    draftId: keepFormDraft(viewer, practiceDraft(student.studentId), data, errors, refusal),
  });
  const why = whyNotRecorded(viewer, student);
  if (why !== null) return refuse({}, why);
  const parsed = parsePracticeForm(data, {
    days: weekDays(week, viewer.today),
    drills: readAssignments(db, student),
    onFile: sumsOf(readPractice(db, student)),
  });
  if (parsed.kind === "issues") {
    const errors = sayFieldIssues(words, parsed.issues);
    const refusal = words.say("practice-form.refusal", { problems: Object.keys(errors).length });
    return refuse(errors, refusal);
  }
  const sent = String(data.get("draft") ?? "");
  const key = isDraftId(sent) ? sent : randomUUID();
  const by = { who: viewer.name, recordedAt: instantOf(viewer.academy) };
  insertPractice(
    db,
    student,
    parsed.value.map((entry) => ({ id: `${student.studentId} ${key} ${entry.day}`, ...entry, ...by })),
  );
  return { kind: "logged", week };
}

/** Takes an entry back, or puts it back. */
export function movePracticeBack(
  viewer: StudentViewer,
  practiceId: string,
  wish: "take" | "put",
): "updated" | "unchanged" {
  const voidedAt = wish === "take" ? instantOf(viewer.academy) : null;
  return updatePracticeVoided(viewer.db, viewer.student, { practiceId, voidedAt }).kind;
}
