import { readCorrections } from "@/db/read/readings";
import { readSessionReadings, readSwingNumbers, type SessionReading } from "@/db/read/session-readings";
import { readSessions } from "@/db/read/sessions";
import { readStudent } from "@/db/read/students";
import { insertSessionCorrection } from "@/db/write/corrections";
import type { Session } from "@/lib/domain/session";
import { parseCorrectionForm } from "@/lib/ingest/parse-correction-form";
import type { FormModel } from "@/lib/report/form-model";
import { instantOf } from "../clock";
import { whyNotRecorded } from "../consent/consent-gate";
import { kindOf } from "../draft/draft-forms";
import { findFormDraft, keepFormDraft } from "../draft/form-draft";
import { sayFieldIssues } from "../draft/say-field-issues";
import { type Refused, submitOnce } from "../draft/submit-once";
import { withKeep } from "../draft/with-keep";
import type { StudentViewer } from "../gate";
import { loadRules } from "../roster/load-verdicts";
import { loadAcademyRules } from "../season/student-record";
import { buildCorrectForm, seenOf, shownIn } from "./correct-form";
import { gridChoices } from "./grid-desk";

/** What came of a form: saved, refused and kept, or about a session that isn't there. */
export type DeskOutcome = { readonly kind: "saved" } | { readonly kind: "not-there" } | Refused;

/** The form of a correction among those that are kept. */
const FORM = "correct-form";

function correctionDraft({ student }: StudentViewer, sessionId: string): string {
  return kindOf(FORM, student.studentId, sessionId);
}

/** A session of the viewer's student; undefined: it isn't there. */
export function findSession(viewer: StudentViewer, sessionId: string): Session | undefined {
  return readSessions(viewer.db, viewer.student).find((session) => session.id === sessionId);
}

/** The form that corrects the readings of a session; null: there is no such session. */
export function loadCorrectForm(
  viewer: StudentViewer,
  sessionId: string,
  draftId: string,
  dropped?: string,
): FormModel | null {
  const { db, student, scope, academy } = viewer;
  const session = findSession(viewer, sessionId);
  if (!session) return null;
  const draft = findFormDraft(viewer, correctionDraft(viewer, sessionId), draftId);
  const { alias, hand } = readStudent(db, student);
  const form = buildCorrectForm(viewer.words, {
    session,
    alias,
    hand,
    letters: gridChoices(viewer).letters,
    swings: readSwingNumbers(db, student, sessionId),
    readings: readSessionReadings(db, student, sessionId),
    fundamentals: loadAcademyRules(db, scope, academy).fundamentals,
    draft,
  });
  return withKeep(viewer, form, { form: FORM, studentId: student.studentId, of: sessionId, draftId, dropped });
}

const placeOf = (reading: Pick<SessionReading, "swing" | "fundamentalId">): string =>
  `${reading.swing}.${reading.fundamentalId}`;

/** Both values in words; the form that comes back holds what was typed, with the other one in sight now. */
function sayOvertaken(viewer: StudentViewer, data: FormData, readings: readonly SessionReading[]) {
  const { words, db, student } = viewer;
  const corrections = readCorrections(db, student);
  const errors: Record<string, string> = {};
  for (const reading of readings) {
    const place = placeOf(reading);
    const by = corrections.filter((each) => each.readingId === reading.id).at(-1);
    errors[`r.${place}`] = words.say("correct.overtaken", {
      now: shownIn(reading) || words.say("correct.taken-out"),
      mine: String(data.get(`r.${place}`) ?? "").trim() || words.say("correct.taken-out"),
      who: by?.who ?? words.say("correct.somebody"),
      why: by?.why ?? "",
      hasWhy: by ? "yes" : "no",
    });
    data.set(`was.${place}`, shownIn(reading));
    data.set(`seen.${place}`, seenOf(reading));
  }
  return errors;
}

/** Corrects readings of a session, once, and judges anew; a refused form is kept with what is wrong in it. */
export async function saveCorrection(viewer: StudentViewer, sessionId: string, data: FormData): Promise<DeskOutcome> {
  const outcome = submitOnce<DeskOutcome>(viewer, correctionDraft(viewer, sessionId), data, () =>
    enterCorrection(viewer, sessionId, data),
  );
  if (outcome.kind === "saved") await loadRules(viewer);
  return outcome;
}

function enterCorrection(viewer: StudentViewer, sessionId: string, data: FormData): DeskOutcome {
  const { words, db, student, scope, academy } = viewer;
  if (!findSession(viewer, sessionId)) return { kind: "not-there" };
  const refuse = (errors: Readonly<Record<string, string>>, refusal: string): DeskOutcome => ({
    kind: "refused",
    draftId: keepFormDraft(viewer, correctionDraft(viewer, sessionId), data, errors, refusal, student.studentId),
  });
  const parsed = parseCorrectionForm(data, loadAcademyRules(db, scope, academy).fundamentals);
  if (parsed.kind === "issues") {
    const errors = sayFieldIssues(words, parsed.issues);
    return refuse(errors, words.say("correct.refusal", { problems: Object.keys(errors).length }));
  }
  const { changes, added, why } = parsed.value;
  // Putting right what is on file stays possible; a value for what was never read is a new one.
  const unasked = added.length > 0 ? whyNotRecorded(viewer, student) : null;
  if (unasked !== null) return refuse({}, unasked);
  const wish = { sessionId, changes, added, who: viewer.name, why, now: instantOf(viewer.academy) };
  const outcome = insertSessionCorrection(db, student, wish);
  if (outcome.kind === "unknown-session") return { kind: "not-there" };
  if (outcome.kind === "conflict") {
    const cells = new Set(
      changes.filter((each) => outcome.readingIds.includes(each.readingId)).map((each) => each.cell),
    );
    for (const each of outcome.added) cells.add(`r.${each.swing}.${each.fundamentalId}`);
    const overtaken = readSessionReadings(db, student, sessionId).filter((each) => cells.has(`r.${placeOf(each)}`));
    return refuse(sayOvertaken(viewer, data, overtaken), words.say("correct.overtaken.refusal"));
  }
  return { kind: "saved" };
}
