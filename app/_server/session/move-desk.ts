import { randomUUID } from "node:crypto";
import { readSwingNumbers } from "@/db/read/session-readings";
import { type FiledStudent, readStudent, readStudents } from "@/db/read/students";
import { mergeStudents } from "@/db/write/merge-students";
import { moveSession } from "@/db/write/move-session";
import { splitSession } from "@/db/write/split-session";
import { CONSENT_KINDS } from "@/lib/domain/consent";
import type { StudentScope } from "@/lib/domain/scope";
import type { FieldIssue } from "@/lib/ingest/field-issue";
import { parseMoveForm, type WishedMove } from "@/lib/ingest/parse-move-form";
import { parseSplitForm } from "@/lib/ingest/parse-split-form";
import type { FieldModel, FormModel } from "@/lib/report/form-model";
import { sayDay } from "@/lib/words/day-words";
import { instantOf } from "../clock";
import { standingOf } from "../consent/consent-gate";
import { kindOf } from "../draft/draft-forms";
import { type FormDraft, findFormDraft, keepFormDraft } from "../draft/form-draft";
import { sayFieldIssues } from "../draft/say-field-issues";
import { type Refused, submitOnce } from "../draft/submit-once";
import { withKeep } from "../draft/with-keep";
import { admitToStudent, type StudentViewer } from "../gate";
import { loadRules } from "../roster/load-verdicts";
import { field } from "../season/student-form";
import { loadAcademyRules } from "../season/student-record";
import { findSession } from "./correct-desk";
import { whenFields } from "./facts-form";
import { buildMoveForm, type MoveKind, moveFields } from "./move-form";

/** What came of a move: `studentId` is whose page shows it now. */
export type MoveOutcome =
  | { readonly kind: "saved"; readonly studentId: string; readonly sessionId: string | null }
  | { readonly kind: "not-there" }
  | Refused;

/** What is to be moved: one session, some of its swings, or everything of the student (no session). */
export interface MoveWish {
  readonly kind: MoveKind;
  readonly sessionId: string | null;
}

function moveDraft(viewer: StudentViewer, { kind, sessionId }: MoveWish): string {
  return kindOf(`${kind}-form`, viewer.student.studentId, sessionId ?? "");
}

/** Everybody to whom it may go; a split may stay with the student. */
function takersOf(viewer: StudentViewer, kind: MoveKind): readonly FiledStudent[] {
  const { studentId } = viewer.student;
  return readStudents(viewer.db, viewer.scope).filter((each) => kind === "split" || each.id !== studentId);
}

/** A new session begins as the one that it was taken from. */
function splitFields(viewer: StudentViewer, sessionId: string, draft: FormDraft | null): readonly FieldModel[] {
  const { words, db, student, scope, academy } = viewer;
  const session = findSession(viewer, sessionId);
  const as = { day: session?.day ?? "", clubGroup: session?.clubGroup ?? "", club: session?.club ?? "" };
  const filled = draft ?? { entries: Object.entries(as), errors: {}, refusal: "" };
  const when = whenFields(words, filled, loadAcademyRules(db, scope, academy).grouping);
  const options = readSwingNumbers(db, student, sessionId).map((number) => ({
    value: String(number),
    label: words.say("session-form.swing-number", { number }),
  }));
  const swings = field(words, draft, "split", { name: "swings", kind: "checkbox", options });
  return [swings, ...when.day, ...when.clubGroup, ...when.club];
}

/** The form of a move; null: there is no such session. */
export function loadMoveForm(
  viewer: StudentViewer,
  wish: MoveWish,
  draftId: string,
  dropped?: string,
): FormModel | null {
  const { words, db, student } = viewer;
  const { kind, sessionId } = wish;
  const session = sessionId === null ? undefined : findSession(viewer, sessionId);
  if (sessionId !== null && !session) return null;
  const draft = findFormDraft(viewer, moveDraft(viewer, wish), draftId);
  const own = readStudent(db, student);
  const day = session ? sayDay(words, session.day, "full") : "";
  const form = buildMoveForm(words, {
    kind,
    heading: words.say(`${kind}.heading`, { alias: own.alias, day }),
    draft,
    what: kind === "split" && sessionId !== null ? splitFields(viewer, sessionId, draft) : [],
    move: moveFields(words, draft, { student: own, takers: takersOf(viewer, kind) }),
    hidden: [
      { name: "studentId", value: student.studentId },
      ...(sessionId === null ? [] : [{ name: "sessionId", value: sessionId }]),
    ],
  });
  const { studentId } = student;
  return withKeep(viewer, form, { form: `${kind}-form`, studentId, of: sessionId ?? "", draftId, dropped });
}

/** Why a student can't take a session of a day; null: nothing is in the way. */
function whyNotTaken(viewer: StudentViewer, to: StudentScope, day: string): FieldIssue | null {
  const { birthYear } = readStudent(viewer.db, to);
  if (birthYear !== null && Number(day.slice(0, 4)) < birthYear)
    return { field: "to", code: "before-birth", args: { year: birthYear } };
  if (to.studentId === viewer.student.studentId) return null;
  return standingOf(viewer, to, "measure").kind === "given"
    ? null
    : { field: "to", code: "taker-without-consent", args: {} };
}

/**
 * A merge puts right who somebody is, so it asks for no consent; but a no that was said under one of the two names isn't to be
 * outlived by a yes under the other, nor by one that is still to begin.
 */
function whyNotMerged(viewer: StudentViewer, to: StudentScope): FieldIssue | null {
  const outlived = CONSENT_KINDS.some((kind) => {
    const kinds = [viewer.student, to].map((student) => standingOf(viewer, student, kind).kind);
    return kinds.includes("withdrawn") && (kinds.includes("given") || kinds.includes("not-yet"));
  });
  return outlived ? { field: "to", code: "merge-withdrawn", args: {} } : null;
}

type Written = { readonly kind: string; readonly sessionId?: string };

/** Does what was wished: what came of it as the writes say it, or an issue found before. */
function write(
  viewer: StudentViewer,
  wish: MoveWish,
  data: FormData,
): Written | { readonly issues: readonly FieldIssue[] } {
  const { db, student: from, today } = viewer;
  const { fundamentals, grouping } = loadAcademyRules(db, viewer.scope, viewer.academy);
  const { hand, birthYear } = readStudent(db, from);
  const takers = takersOf(viewer, wish.kind);
  const now = instantOf(viewer.academy);
  const noteOf = ({ why }: WishedMove) => ({ who: viewer.name, why, now });
  const scopeOf = (id: string): StudentScope => {
    const scope = admitToStudent(viewer, id);
    if (!scope) throw new Error("a student of another academy");
    return scope;
  };
  const turnedBy = ({ signs }: WishedMove): readonly string[] =>
    signs === "turn" ? fundamentals.filter((each) => each.mirrors === "mirrors").map((each) => each.id) : [];
  const session = wish.sessionId === null ? undefined : findSession(viewer, wish.sessionId);
  if (session === undefined || wish.kind === "merge") {
    const parsed = parseMoveForm(data, { hand, takers });
    if (parsed.kind === "issues") return parsed;
    const issue = whyNotMerged(viewer, scopeOf(parsed.value.to));
    if (issue) return { issues: [issue] };
    return mergeStudents(db, { from, to: scopeOf(parsed.value.to) }, turnedBy(parsed.value), noteOf(parsed.value));
  }
  const sessionId = session.id;
  if (wish.kind === "move") {
    const parsed = parseMoveForm(data, { hand, takers });
    if (parsed.kind === "issues") return parsed;
    const to = scopeOf(parsed.value.to);
    const issue = whyNotTaken(viewer, to, session.day);
    if (issue) return { issues: [issue] };
    const made = moveSession(db, { from, to }, { sessionId, turned: turnedBy(parsed.value) }, noteOf(parsed.value));
    return { ...made, sessionId };
  }
  const swings = readSwingNumbers(db, from, sessionId);
  const parsed = parseSplitForm(data, { hand, takers, today, grouping, birthYear, swings });
  if (parsed.kind === "issues") return parsed;
  const to = scopeOf(parsed.value.to);
  const issue = whyNotTaken(viewer, to, parsed.value.day);
  if (issue) return { issues: [issue] };
  const split = { ...parsed.value, sessionId, newId: randomUUID(), turned: turnedBy(parsed.value) };
  return splitSession(db, { from, to }, split, noteOf(parsed.value));
}

/** Moves, splits or merges, once, and judges anew; a refused form is kept with what is wrong in it. */
export async function saveMove(viewer: StudentViewer, wish: MoveWish, data: FormData): Promise<MoveOutcome> {
  const outcome = submitOnce<MoveOutcome>(viewer, moveDraft(viewer, wish), data, () => enterMove(viewer, wish, data));
  if (outcome.kind === "saved") await loadRules(viewer);
  return outcome;
}

function enterMove(viewer: StudentViewer, wish: MoveWish, data: FormData): MoveOutcome {
  const { words } = viewer;
  if (wish.sessionId !== null && !findSession(viewer, wish.sessionId)) return { kind: "not-there" };
  const refuse = (errors: Readonly<Record<string, string>>, refusal: string): MoveOutcome => ({
    kind: "refused",
    draftId: keepFormDraft(viewer, moveDraft(viewer, wish), data, errors, refusal, viewer.student.studentId),
  });
  const made = write(viewer, wish, data);
  if ("issues" in made) {
    const { grouping } = loadAcademyRules(viewer.db, viewer.scope, viewer.academy);
    const errors = sayFieldIssues(words, made.issues, grouping);
    return refuse(errors, words.say("correct.refusal", { problems: Object.keys(errors).length }));
  }
  if (!["moved", "split", "merged"].includes(made.kind)) return refuse({}, words.say(`move.no.${made.kind}`));
  return { kind: "saved", studentId: String(data.get("to")), sessionId: made.sessionId ?? null };
}
