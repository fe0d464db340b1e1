import { z } from "zod";
import { insertNoteCoding } from "@/db/write/note-codings";
import { countKey, readCountKey } from "@/lib/domain/count-key";
import { type PhraseCoding, parsePhraseCoding } from "@/lib/domain/phrase-coding";
import type { Codings, OwnCounts } from "@/lib/ingest/apply-codings";
import { type CodedContact, codeContactNote } from "@/lib/ingest/code-contact-note";
import { isLooseCount } from "@/lib/ingest/contact-phrases";
import { currentInstant } from "../clock";
import type { Viewer } from "../gate";

/** Longest place of a phrase: as long as a note may be, with the figures before it. */
const LONGEST = 2010;

/** Counts of one note that may be said at once; a form that brings more was not made by a page. */
const MOST = 200;

const said = z.object({ place: z.string().min(1).max(LONGEST), coding: z.unknown() });

/** A count that was tapped, or kept in a form. */
interface SaidCount {
  readonly place: string;
  readonly coding: PhraseCoding;
}

/** One said count as text; null: it isn't a whole one. Only counts, mentions and what is taken back can be said of a place. */
function readSaid(value: unknown): SaidCount | null {
  const read = said.safeParse(value);
  const coding = read.success ? parsePhraseCoding(JSON.stringify(read.data.coding ?? null)) : null;
  const fits = coding !== null && (coding.as === "count" || coding.as === "mention" || coding.as === "as-read");
  return read.success && fits ? { place: read.data.place, coding } : null;
}

function readJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

/** What was tapped of a note's counts in a form, with the phrase of the note that it is said of; what is of none is left out. */
export function tappedCounts(data: FormData): readonly (SaidCount & { readonly contact: CodedContact })[] {
  const texts = data.getAll("recount").slice(0, MOST).map(String);
  if (texts.length === 0) return [];
  const { contacts } = codeContactNote(String(data.get("note") ?? ""), null);
  return texts.flatMap((text) => {
    const tap = readSaid(readJson(text));
    const contact = contacts.find((each) => each.place === tap?.place);
    return tap && contact ? [{ ...tap, contact }] : [];
  });
}

/** Counts that a form keeps of its note, with those tapped since. */
export function formCounts(data: FormData): OwnCounts {
  const listed = readJson(String(data.get("counted") ?? ""));
  const kept = (Array.isArray(listed) ? listed.slice(0, MOST) : []).flatMap((each) => readSaid(each) ?? []);
  const counts = new Map(kept.map(({ place, coding }) => [place, coding]));
  for (const { place, coding, contact } of tappedCounts(data)) {
    counts.delete(place);
    if (coding.as !== "as-read" && isOfThisNote(coding, contact)) counts.set(place, coding);
  }
  return counts;
}

/** The same as a field of the form; empty: nothing was said. */
export function countedText(counts: OwnCounts): string {
  const list = [...counts].map(([place, coding]) => ({ place, coding }));
  return list.length === 0 ? "" : JSON.stringify(list);
}

/** Whether what is said of a count holds for this note alone; a number word is meant alike in every note. */
function isOfThisNote(coding: PhraseCoding, { said: words }: CodedContact): boolean {
  return coding.as === "mention" || !isLooseCount(words);
}

function record({ db, scope, name }: Viewer, phrase: string, coding: PhraseCoding): void {
  insertNoteCoding(db, scope, { phrase, coding, who: name, recordedAt: currentInstant() });
}

/** Remembers for the academy what was tapped of number words, and what of them was taken back. */
export function rememberLooseCounts(viewer: Viewer, data: FormData): void {
  for (const { coding, contact } of tappedCounts(data))
    if (isLooseCount(contact.said) && coding.as !== "mention")
      record(viewer, countKey({ scope: "academy", words: contact.said }), coding);
}

/** Counts that were said of one session's note, from what the academy recorded. */
export function sessionCounts(codings: Codings, sessionId: string): OwnCounts {
  return new Map(
    [...codings].flatMap(([phrase, coding]) => {
      const key = readCountKey(phrase);
      return key?.scope === "note" && key.sessionId === sessionId ? [[key.place, coding] as const] : [];
    }),
  );
}

/** Records of a saved session what its form says of its note's counts; those of phrases that no longer stand in it are gone. */
export function recordCounts(viewer: Viewer, sessionId: string, data: FormData): void {
  rememberLooseCounts(viewer, data);
  const { contacts } = codeContactNote(String(data.get("note") ?? ""), null);
  const places = new Set(contacts.map((contact) => contact.place));
  for (const [place, coding] of formCounts(data))
    if (places.has(place)) record(viewer, countKey({ scope: "note", sessionId, place }), coding);
}

/** Records what was tapped beside the note of a saved session. */
export function recountSession(viewer: Viewer, sessionId: string, data: FormData): void {
  rememberLooseCounts(viewer, data);
  for (const { place, coding, contact } of tappedCounts(data)) {
    const own: PhraseCoding = isOfThisNote(coding, contact) ? coding : { as: "as-read" };
    record(viewer, countKey({ scope: "note", sessionId, place }), own);
  }
}
