import type { RecodedNote } from "@/lib/ingest/apply-codings";
import { noteSentences } from "@/lib/ingest/note-sentences";
import type { NoteAnswer } from "@/lib/report/note-answer-model";
import type { Words } from "@/lib/words/catalogue";
import { noteRows } from "./note-rows";

/** A note as typed, the shots as typed beside it, and what was read in it. */
export interface AskedNote {
  readonly note: string;
  /** Null: empty, or not a whole number. */
  readonly solid: number | null;
  readonly balls: number | null;
  readonly coded: RecodedNote;
  /** What was said of this note's counts, as its field holds it. */
  readonly counted: string;
  /** An id of a student. */
  readonly whose: string;
  /** The name of a field in the form that the note stands in. */
  readonly named: (field: string) => string;
}

const SETTINGS = "/settings/notes";

/** What a note says of strikes, beside each of its sentences, with what can be said to it. */
export function buildNoteAnswer(words: Words, asked: AskedNote): NoteAnswer {
  const { note, coded, named, whose } = asked;
  const found = noteRows({ ...asked, words }, coded);
  const corrected =
    coded.contacts.some((each) => each.corrected === "yes" || each.corrected === "word") ||
    coded.passed.some((each) => each.why === "corrected");
  return {
    whose,
    fields: { note: named("note"), solid: named("solid"), balls: named("balls") },
    counted: { name: named("counted"), value: asked.counted },
    heading: headingOf(words, asked),
    sentences: noteSentences(note).map(([from, to]) => ({
      text: note.slice(from, to).trim(),
      rows: found.filter((each) => from <= each.from && each.from < to).map(({ row }) => row),
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
  const choice = { name: asked.named("fill"), value: `${solid}/${balls}`, label: words.say("note.offer", given) };
  return { choice, solid, balls };
}
