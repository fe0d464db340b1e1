import { z } from "zod";
import { readNoteCodings } from "@/db/read/note-codings";
import { insertNoteCoding } from "@/db/write/note-codings";
import { codingsInForce, parsePhraseCoding } from "@/lib/domain/phrase-coding";
import type { Session } from "@/lib/domain/session";
import { applyCodings, type Codings, type OwnCounts } from "@/lib/ingest/apply-codings";
import { codeContactNote } from "@/lib/ingest/code-contact-note";
import { fieldText } from "@/lib/ingest/field-issue";
import { collectIssues, count } from "@/lib/ingest/form-fields";
import { groupName } from "@/lib/ingest/parse-group-form";
import type { NoteAnswer } from "@/lib/report/note-answer-model";
import { currentInstant } from "../clock";
import { orNothing } from "../door/when-disk-fails";
import type { FormDraft } from "../draft/form-draft";
import type { StudentViewer, Viewer } from "../gate";
import { buildNoteAnswer } from "./note-answer";
import {
  countedText,
  formCounts,
  recordCounts,
  recountSession,
  rememberLooseCounts,
  sessionCounts,
} from "./note-counts";

/** Longest note that a form takes; a longer one is refused when the form is sent. */
const LONGEST = 2000;

const tapped = z.object({ phrase: z.string().min(1).max(LONGEST), coding: z.unknown() });

/** What the academy said of phrases in notes, by their compared form. */
export function loadCodings({ db, scope }: Pick<Viewer, "db" | "scope">): Codings {
  return new Map(codingsInForce(readNoteCodings(db, scope)).map((row) => [row.phrase, row.coding]));
}

/** The form that a note stands in: whose it is, and what its fields are called there. */
export interface NoteForm {
  readonly studentId: string;
  readonly named: (field: string) => string;
}

/** The form of one student's session, whose fields have their plain names. */
export function singleNote(studentId: string): NoteForm {
  return { studentId, named: (field) => field };
}

/** The part of a group's form that is one student's. */
export function groupNote(studentId: string): NoteForm {
  return { studentId, named: (field) => groupName(studentId, field) };
}

/** Fields of a form that a note's answer rests on, or that a tap fills. */
const NOTE_FIELDS = ["note", "solid", "balls", "counted", "recode", "recount", "fill"];

/** The note's own fields of a form that may hold several notes, as a form of one note has them. */
function ownFields(data: FormData, { named }: NoteForm): FormData {
  const own = new FormData();
  for (const field of NOTE_FIELDS) for (const value of data.getAll(named(field))) own.append(field, value);
  return own;
}

/** What a note of a form says of strikes, as the form stands. What was tapped is remembered first. */
export function answerNote(viewer: Viewer, data: FormData, form: NoteForm): NoteAnswer {
  const own = ownFields(data, form);
  // A tap that the disk takes nothing of shows as if it were not: the phrase stays as it was read.
  orNothing(() => {
    rememberTapped(viewer, own);
    rememberLooseCounts(viewer, own);
  });
  return sayNote(viewer, own, form, formCounts(own));
}

/** What of a session on file its note is read with. */
type SessionNote = Pick<Session, "id" | "note" | "solid" | "balls">;

/** What the note of a session on file says; null: it has none. */
export function answerSessionNote(viewer: StudentViewer, session: SessionNote): NoteAnswer | null {
  if (session.note === null) return null;
  const data = new FormData();
  data.set("note", session.note);
  if (session.solid !== null) data.set("solid", String(session.solid));
  if (session.balls !== null) data.set("balls", String(session.balls));
  const form = singleNote(viewer.student.studentId);
  // What is put into fields is a form's; here the facts are corrected on their own page.
  return { ...sayNote(viewer, data, form, sessionCounts(loadCodings(viewer), session.id)), offer: null };
}

function sayNote(viewer: Viewer, own: FormData, { studentId, named }: NoteForm, counts: OwnCounts): NoteAnswer {
  const { add } = collectIssues();
  const note = String(own.get("note") ?? "").slice(0, LONGEST);
  const [solid, balls] = [count(own, "solid", 1000, add), count(own, "balls", 1000, add)];
  const coded = applyCodings(codeContactNote(note, balls), loadCodings(viewer), balls, counts);
  return buildNoteAnswer(viewer.words, {
    ...{ note, solid, balls, coded, named },
    counted: countedText(counts),
    whose: studentId,
  });
}

/** The same from a draft. */
export function answerDraftNote(viewer: Viewer, draft: FormDraft | null, form: NoteForm): NoteAnswer {
  const data = new FormData();
  for (const field of ["note", "solid", "balls", "counted"])
    for (const [name, value] of draft?.entries ?? []) if (name === form.named(field)) data.set(name, value);
  return answerNote(viewer, data, form);
}

/** Remembers what was tapped and puts in what was taken over; the rest of the form is left as it is, without the taps. */
export function settleNote(viewer: Viewer, data: FormData, form: NoteForm): FormData {
  const { named } = form;
  const own = ownFields(data, form);
  rememberTapped(viewer, own);
  rememberLooseCounts(viewer, own);
  const [, solid, balls] = /^(\d{1,4})\/(\d{1,4})$/.exec(fieldText(own, "fill")) ?? [];
  if (solid !== undefined && balls !== undefined) {
    data.set(named("solid"), solid);
    data.set(named("balls"), balls);
  }
  const counted = countedText(formCounts(own));
  if (counted !== "" || data.has(named("counted"))) data.set(named("counted"), counted);
  for (const tap of ["recode", "recount", "fill"]) data.delete(named(tap));
  return data;
}

/** Records what the form of a session that was saved says of its note: what was tapped, and its counts. */
export function recordNote(viewer: Viewer, sessionId: string, data: FormData, form: NoteForm): void {
  const own = ownFields(data, form);
  rememberTapped(viewer, own);
  recordCounts(viewer, sessionId, own);
}

/** Records what was tapped beside the note of a session on file; nothing where it has none. */
export function tapSessionNote(viewer: StudentViewer, session: SessionNote, data: FormData): void {
  if (session.note === null) return;
  data.set("note", session.note);
  rememberTapped(viewer, data);
  recountSession(viewer, session.id, data);
}

/** Only phrases of the note itself can be spoken of, so that nothing is remembered that nobody read. */
function rememberTapped(viewer: Viewer, data: FormData): void {
  const texts = data.getAll("recode").map(String);
  if (texts.length === 0) return;
  const { contacts, passed } = codeContactNote(String(data.get("note") ?? ""), null);
  const phrases = new Set([...contacts, ...passed].map((each) => each.phrase));
  for (const text of texts) {
    const read = readTapped(text);
    if (read && read.coding.as !== "count" && phrases.has(read.phrase)) remember(viewer, read.phrase, read.coding);
  }
}

function readTapped(text: string) {
  try {
    const { phrase, coding } = tapped.parse(JSON.parse(text));
    const read = parsePhraseCoding(JSON.stringify(coding ?? null));
    return read ? { phrase, coding: read } : null;
  } catch {
    return null;
  }
}

function remember(
  { db, scope, name }: Viewer,
  phrase: string,
  coding: Parameters<typeof insertNoteCoding>[2]["coding"],
) {
  insertNoteCoding(db, scope, { phrase, coding, who: name, recordedAt: currentInstant() });
}

/** Takes back what was said of a phrase; its history stays. */
export function takeBackCoding(viewer: Viewer, data: FormData): void {
  const phrase = String(data.get("phrase") ?? "");
  if (loadCodings(viewer).has(phrase)) remember(viewer, phrase, { as: "as-read" });
}
