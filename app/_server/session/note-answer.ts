import { CONTACT_KINDS, type ContactKind } from "@/lib/domain/contact-word";
import type { PhraseCoding } from "@/lib/domain/phrase-coding";
import type { RecodedContact, RecodedNote, RecodedWord } from "@/lib/ingest/apply-codings";
import { noteSentences } from "@/lib/ingest/note-sentences";
import type { NoteAnswer, NoteChoice, NoteRow } from "@/lib/report/note-answer-model";
import type { Words } from "@/lib/words/catalogue";

/** A note as typed, the shots as typed beside it, and what was read in it. */
export interface AskedNote {
  readonly note: string;
  /** Null: empty, or not a whole number. */
  readonly solid: number | null;
  readonly balls: number | null;
  readonly coded: RecodedNote;
}

const SETTINGS = "/settings/notes";

/** What a note says of strikes, beside each of its sentences, with what can be said to it. */
export function buildNoteAnswer(words: Words, asked: AskedNote): NoteAnswer {
  const { note, coded } = asked;
  const found = [
    ...coded.contacts.map((contact) => ({ at: contact.at, row: contactRow(words, note, contact) })),
    ...coded.passed.map((word) => ({ at: word.at, row: passedRow(words, note, word) })),
  ].sort((a, b) => a.at[0] - b.at[0]);
  const corrected = [...coded.contacts.filter((each) => each.corrected === "yes"), ...coded.passed].some(
    (each) => !("why" in each) || each.why === "corrected",
  );
  return {
    heading: headingOf(words, asked),
    sentences: noteSentences(note).map(([from, to]) => ({
      text: note.slice(from, to).trim(),
      rows: found.filter(({ at }) => from <= at[0] && at[0] < to).map(({ row }) => row),
    })),
    asks: asksOf(words, asked),
    offer: offerOf(words, asked),
    moreLabel: words.say("note.more"),
    remembered: corrected ? { href: SETTINGS, label: words.say("note.remembered") } : null,
  };
}

function headingOf(words: Words, { note, coded }: AskedNote): string {
  if (note.trim() === "") return words.say("note.empty");
  if (coded.contacts.length === 0) return words.say("note.none");
  const counted = coded.contacts.filter((each) => each.count !== null).length;
  return words.say("note.heading", { counted, named: coded.contacts.length - counted });
}

/** A choice that says something of a phrase. */
function recode(words: Words, phrase: string, coding: PhraseCoding, label: string): NoteChoice {
  return { name: "recode", value: JSON.stringify({ phrase, coding }), label: words.say(label) };
}

function kinds(words: Words, phrase: string, but: ContactKind | null): readonly NoteChoice[] {
  return CONTACT_KINDS.filter((kind) => kind !== but).map((kind) =>
    recode(words, phrase, { as: "strike", kind }, `contact.kind.${kind}`),
  );
}

function contactRow(words: Words, note: string, contact: RecodedContact): NoteRow {
  const { phrase, count, of, at, corrected } = contact;
  const kind = words.say(`contact.kind.${contact.kind}`);
  const how = count === null ? "named" : count === 0 && of === null ? "zero" : of === null ? "count" : "share";
  const said = words.say(`note.said.${how}`, { kind, count: count ?? 0, of: of ?? 0 });
  const mention = count === null ? [] : [recode(words, phrase, { as: "mention" }, "note.choice.mention")];
  return {
    word: note.slice(at[0], at[1]),
    said: corrected === "yes" ? words.say("note.said.corrected", { said }) : said,
    state: count === null ? "named" : "counted",
    choices:
      corrected === "yes"
        ? [recode(words, phrase, { as: "as-read" }, "note.choice.take-back")]
        : [recode(words, phrase, { as: "nothing" }, "note.choice.not-so"), ...mention],
    more: kinds(words, phrase, contact.kind),
  };
}

function passedRow(words: Words, note: string, { phrase, why, at }: RecodedWord): NoteRow {
  return {
    word: note.slice(at[0], at[1]),
    said: words.say(`note.passed.${why}`),
    state: "passed",
    choices: why === "corrected" ? [recode(words, phrase, { as: "as-read" }, "note.choice.take-back")] : [],
    more: why === "direction" ? [] : kinds(words, phrase, null),
  };
}

/** Solid strikes of balls that the note gives; null: it gives none, or more than one share. */
function solidOf({ coded, balls }: AskedNote): { readonly solid: number; readonly balls: number } | null {
  const good = coded.contacts.filter((each) => each.kind === "good" && each.count !== null);
  const [only] = good;
  if (only === undefined || good.length > 1) return null;
  const of = only.of ?? balls;
  return of === null || (only.count as number) > of ? null : { solid: only.count as number, balls: of };
}

function asksOf(words: Words, asked: AskedNote): readonly string[] {
  const { solid, balls, coded } = asked;
  const given = solidOf(asked);
  const asks: string[] = [];
  if (coded.tooMany === "yes") asks.push(words.say("note.ask.too-many", { balls: balls ?? 0 }));
  if (given !== null && solid !== null && balls !== null && (given.solid !== solid || given.balls !== balls))
    asks.push(words.say("note.ask.differs", { ...given, typedSolid: solid, typedBalls: balls }));
  return asks;
}

function offerOf(words: Words, asked: AskedNote): NoteAnswer["offer"] {
  const given = solidOf(asked);
  if (given === null || asked.solid !== null || (asked.balls !== null && asked.balls !== given.balls)) return null;
  const [solid, balls] = [String(given.solid), String(given.balls)];
  return { choice: { name: "fill", value: `${solid}/${balls}`, label: words.say("note.offer", given) }, solid, balls };
}
