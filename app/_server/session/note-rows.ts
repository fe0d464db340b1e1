import { CONTACT_KINDS, type ContactKind } from "@/lib/domain/contact-word";
import type { PhraseCoding } from "@/lib/domain/phrase-coding";
import type { RecodedContact, RecodedNote, RecodedWord } from "@/lib/ingest/apply-codings";
import type { NoteChoice, NoteRow } from "@/lib/report/note-answer-model";
import type { Words } from "@/lib/words/catalogue";

/** Counts offered where neither the note nor the form says of how many balls. */
const USUAL_COUNTS = 10;

/** Most counts offered: more buttons are no choice any more, and the note itself can be edited. */
const MOST_COUNTS = 30;

/** What the rows of a note are said with. */
export interface RowSource {
  readonly words: Words;
  readonly note: string;
  /** How many were hit, where it is known. */
  readonly balls: number | null;
  /** The name of a field in the form that the note stands in. */
  readonly named: (field: string) => string;
}

/** A choice that says something of a phrase in every note. */
function recode({ words, named }: RowSource, phrase: string, coding: PhraseCoding, label: string): NoteChoice {
  return { name: named("recode"), value: JSON.stringify({ phrase, coding }), label: words.say(label) };
}

/** A choice that says something of one count. */
function recount({ named }: RowSource, place: string, coding: PhraseCoding, label: string): NoteChoice {
  return { name: named("recount"), value: JSON.stringify({ place, coding }), label };
}

function kinds(source: RowSource, phrase: string, but: ContactKind | null): readonly NoteChoice[] {
  return CONTACT_KINDS.filter((kind) => kind !== but).map((kind) =>
    recode(source, phrase, { as: "strike", kind }, `contact.kind.${kind}`),
  );
}

/** Other counts that a phrase may mean: a number, not of so many, or named only. A number of balls is never offered. */
function countsOf(source: RowSource, contact: RecodedContact): NoteRow["counts"] {
  const { words, balls } = source;
  const { place, count, of } = contact;
  // A word that the rules passed over stands in no place of a count.
  if (place === "") return null;
  const kind = words.say(`contact.kind.${contact.kind}`);
  const most = Math.min(MOST_COUNTS, of ?? balls ?? Math.max(USUAL_COUNTS, count ?? 0));
  const numbers = Array.from({ length: most + 1 }, (_, number) => number).filter((number) => number !== count);
  return {
    summary: words.say("note.counts", { known: count === null ? "no" : "yes", count: count ?? 0 }),
    choices: [
      ...numbers.map((number) => ({
        ...recount(source, place, { as: "count", count: number, of: "as-read" }, String(number)),
        spoken: words.say("note.said.count", { count: number, kind }),
      })),
      ...(count === null || of === null
        ? []
        : [recount(source, place, { as: "count", count, of: "none" }, words.say("note.choice.not-of", { count, of }))]),
      ...(count === null ? [] : [recount(source, place, { as: "mention" }, words.say("note.choice.mention-here"))]),
    ],
  };
}

function sayContact(words: Words, { count, of, corrected, ...contact }: RecodedContact): string {
  const kind = words.say(`contact.kind.${contact.kind}`);
  const how = count === null ? "named" : count === 0 && of === null ? "zero" : of === null ? "count" : "share";
  const said = words.say(`note.said.${how}`, { kind, count: count ?? 0, of: of ?? 0 });
  if (corrected === "no") return said;
  return words.say(corrected === "here" ? "note.said.corrected-here" : "note.said.corrected", { said });
}

/** What is at hand beside a phrase: taking back what was said of it, else that it is none or only named in every note. */
function choicesOf(source: RowSource, { phrase, place, count, corrected }: RecodedContact): readonly NoteChoice[] {
  if (corrected === "yes") return [recode(source, phrase, { as: "as-read" }, "note.choice.take-back")];
  const back = source.words.say("note.choice.take-back");
  if (corrected !== "no") return [recount(source, place, { as: "as-read" }, back)];
  const mention = count === null ? [] : [recode(source, phrase, { as: "mention" }, "note.choice.mention")];
  return [recode(source, phrase, { as: "nothing" }, "note.choice.not-so"), ...mention];
}

function contactRow(source: RowSource, contact: RecodedContact): NoteRow {
  const { at, phrase } = contact;
  return {
    word: source.note.slice(at[0], at[1]),
    said: sayContact(source.words, contact),
    state: contact.count === null ? "named" : "counted",
    choices: choicesOf(source, contact),
    more: kinds(source, phrase, contact.kind),
    counts: countsOf(source, contact),
  };
}

function passedRow(source: RowSource, { phrase, why, at }: RecodedWord): NoteRow {
  return {
    word: source.note.slice(at[0], at[1]),
    said: source.words.say(`note.passed.${why}`),
    state: "passed",
    choices: why === "corrected" ? [recode(source, phrase, { as: "as-read" }, "note.choice.take-back")] : [],
    more: why === "direction" ? [] : kinds(source, phrase, null),
    counts: null,
  };
}

/** A row for every word of a note that names a strike or might, in their order, with the place where it begins. */
export function noteRows(
  source: RowSource,
  coded: RecodedNote,
): readonly { readonly from: number; readonly row: NoteRow }[] {
  return [
    ...coded.contacts.map((contact) => ({ from: contact.at[0], row: contactRow(source, contact) })),
    ...coded.passed.map((word) => ({ from: word.at[0], row: passedRow(source, word) })),
  ].sort((a, b) => a.from - b.from);
}
