import { z } from "zod";
import { readNoteCodings } from "@/db/read/note-codings";
import { insertNoteCoding } from "@/db/write/note-codings";
import { codingsInForce, parsePhraseCoding } from "@/lib/domain/phrase-coding";
import { applyCodings, type Codings } from "@/lib/ingest/apply-codings";
import { codeContactNote } from "@/lib/ingest/code-contact-note";
import { fieldText } from "@/lib/ingest/field-issue";
import { collectIssues, count } from "@/lib/ingest/form-fields";
import type { NoteAnswer } from "@/lib/report/note-answer-model";
import { currentInstant } from "../clock";
import { orNothing } from "../door/when-disk-fails";
import type { FormDraft } from "../draft/form-draft";
import type { Viewer } from "../gate";
import { buildNoteAnswer } from "./note-answer";

/** Longest note that a form takes; a longer one is refused when the form is sent. */
const LONGEST = 2000;

const tapped = z.object({ phrase: z.string().min(1).max(LONGEST), coding: z.unknown() });

/** What the academy said of phrases in notes, by their compared form. */
export function loadCodings({ db, scope }: Pick<Viewer, "db" | "scope">): Codings {
  return new Map(codingsInForce(readNoteCodings(db, scope)).map((row) => [row.phrase, row.coding]));
}

/** What the note of a form says of strikes, as the form stands. What was tapped is remembered first. */
export function answerNote(viewer: Viewer, data: FormData): NoteAnswer {
  // A tap that the disk takes nothing of shows as if it were not: the phrase stays as it was read.
  orNothing(() => rememberTapped(viewer, data));
  const { add } = collectIssues();
  const note = String(data.get("note") ?? "").slice(0, LONGEST);
  const [solid, balls] = [count(data, "solid", 1000, add), count(data, "balls", 1000, add)];
  const coded = applyCodings(codeContactNote(note, balls), loadCodings(viewer), balls);
  return buildNoteAnswer(viewer.words, { note, solid, balls, coded });
}

/** The same from a draft. */
export function answerDraftNote(viewer: Viewer, draft: FormDraft | null): NoteAnswer {
  const data = new FormData();
  for (const [name, value] of draft?.entries ?? [])
    if (name === "note" || name === "solid" || name === "balls") data.set(name, value);
  return answerNote(viewer, data);
}

/** Remembers what was tapped and puts in what was taken over; the rest of the form is left as it is, without the taps. */
export function settleNote(viewer: Viewer, data: FormData): FormData {
  rememberTapped(viewer, data);
  const [, solid, balls] = /^(\d{1,4})\/(\d{1,4})$/.exec(fieldText(data, "fill")) ?? [];
  if (solid !== undefined && balls !== undefined) {
    data.set("solid", solid);
    data.set("balls", balls);
  }
  data.delete("recode");
  data.delete("fill");
  return data;
}

/** Only phrases of the note itself can be spoken of, so that nothing is remembered that nobody read. */
function rememberTapped(viewer: Viewer, data: FormData): void {
  const texts = data.getAll("recode").map(String);
  if (texts.length === 0) return;
  const { contacts, passed } = codeContactNote(String(data.get("note") ?? ""), null);
  const phrases = new Set([...contacts, ...passed].map((each) => each.phrase));
  for (const text of texts) {
    const read = readTapped(text);
    if (read && phrases.has(read.phrase)) remember(viewer, read.phrase, read.coding);
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
