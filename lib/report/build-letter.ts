import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { langOf } from "@/lib/words/family-words";
import type { LetterSheet } from "./tell-model";
import type { TellPiece } from "./tell-pieces";
import type { Telling } from "./tell-source";

/** What a coach chose for a letter. */
export interface LetterChoice {
  /** Keys of the sentences in the order in which they stand; what isn't named is left out where it may be. */
  readonly order: readonly string[];
  /** The coach's own paragraph; empty: none. */
  readonly own: string;
  readonly place: "first" | "last";
}

/** Who writes a letter. */
export interface LetterFrom {
  readonly coach: string;
  readonly academy: string;
}

/** A coach's page and the letter on it may be in two languages. */
export interface LetterWords {
  readonly page: Words;
  readonly family: Words;
}

/** The sentences of a letter: those that were chosen, in their order, and before them whatever must stay and wasn't named. */
export function chosenPieces(pieces: readonly TellPiece[], order: readonly string[]): readonly TellPiece[] {
  const chosen = [...new Set(order)].flatMap((key) => pieces.find((piece) => piece.key === key) ?? []);
  return [...pieces.filter((piece) => piece.may === "stay" && !chosen.includes(piece)), ...chosen];
}

/** A season letter: generated sentences, never reworded, and the coach's own paragraph, marked as theirs. */
export function buildLetter(
  { page, family: words }: LetterWords,
  {
    telling,
    pieces,
  }: { readonly telling: Pick<Telling, "student" | "today" | "story">; readonly pieces: readonly TellPiece[] },
  choice: LetterChoice,
  from: LetterFrom,
): LetterSheet {
  const { student, today, story } = telling;
  const chosen = chosenPieces(pieces, choice.order);
  const own = choice.own.split(/[\r\n]+/).filter((line) => line.trim() !== "");
  return {
    lang: langOf(words),
    margin: page.say("letter.margin.sheet"),
    explains: page.say("letter.sheet.explains"),
    from: from.academy,
    day: sayDay(words, today, "full"),
    // The heading tells a finding: what was left out isn't told by it.
    heading: chosen.length === pieces.length ? story.heading : words.say("family.title", { alias: student.alias }),
    paragraphs: chosen.map(({ text }) => text),
    own:
      own.length === 0
        ? null
        : { heading: words.say("letter.own", { coach: from.coach }), lines: own, place: choice.place },
    foot: [
      words.say("family.pain.child"),
      words.say("family.pain.grown-ups"),
      words.say("letter.foot", { alias: student.alias, coach: from.coach }),
    ],
  };
}

/** Every word of a letter in its order, for a mail or a message, and as it is kept when it was sent. */
export function letterText({ from, day, heading, paragraphs, own, foot }: LetterSheet): string {
  const mine = own === null ? [] : [[own.heading, ...own.lines].join("\n")];
  return [
    `${from}\n${day}`,
    heading,
    ...(own?.place === "first" ? mine : []),
    ...paragraphs,
    ...(own?.place === "last" ? mine : []),
    foot.join("\n"),
  ].join("\n\n");
}
