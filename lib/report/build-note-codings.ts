import { readCountKey } from "@/lib/domain/count-key";
import { codingsInForce, type PhraseCoding, type RecordedCoding } from "@/lib/domain/phrase-coding";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import type { Link, TableModel } from "./basic-model";

/** The page of the phrases that an academy corrected: those in force, each to be taken back, and the history. */
export interface NoteCodingsPage {
  readonly title: string;
  readonly lede: string;
  readonly back: Link;
  readonly margin: string;
  /** Said in place of the table where nothing is in force; empty: the table stands. */
  readonly none: string;
  readonly table: TableModel;
  readonly changeLabel: string;
  /** One a row of the table. */
  readonly takeBacks: readonly { readonly phrase: string; readonly label: string }[];
  /** Null: nothing was ever said. */
  readonly history: { readonly margin: string; readonly table: TableModel } | null;
}

/** A phrase as it is read: of a count the words of the note, without the place that names them there. */
function sayPhrase(words: Words, phrase: string): string {
  const key = readCountKey(phrase);
  if (key === null) return phrase;
  if (key.scope === "academy") return key.words;
  return words.say("codings-page.in-note", { phrase: key.place.replace(/^\d+ /, "") });
}

function sayCoding(words: Words, coding: PhraseCoding): string {
  if (coding.as === "count") return words.say("coding.count", { count: coding.count, of: coding.of });
  return words.say(`coding.${coding.as}`, {
    kind: coding.as === "strike" ? words.say(`contact.kind.${coding.kind}`) : "",
  });
}

function row(words: Words, { phrase, coding, who, recordedAt }: RecordedCoding): TableModel["rows"][number] {
  return {
    cells: [sayPhrase(words, phrase), sayCoding(words, coding), who, sayDay(words, recordedAt.slice(0, 10), "full")],
    tone: "plain",
  };
}

/**
 * The page of an academy's corrected phrases.
 *
 * @param recorded oldest first
 */
export function buildNoteCodings(words: Words, recorded: readonly RecordedCoding[]): NoteCodingsPage {
  const say = (key: string) => words.say(`codings-page.${key}`);
  const columns = ["phrase", "coding", "who", "when"].map((name) => ({ label: say(name), align: "start" }) as const);
  const inForce = codingsInForce(recorded);
  return {
    title: say("title"),
    lede: say("lede"),
    back: { href: "/settings", label: say("back") },
    margin: say("margin"),
    none: inForce.length === 0 ? say("none") : "",
    table: { caption: say("caption"), columns, rows: inForce.map((each) => row(words, each)) },
    changeLabel: say("change"),
    takeBacks: inForce.map(({ phrase }) => ({
      phrase,
      label: words.say("codings-page.take-back", { phrase: sayPhrase(words, phrase) }),
    })),
    history:
      recorded.length === 0
        ? null
        : {
            margin: say("history"),
            table: {
              caption: say("history.caption"),
              columns,
              rows: recorded.toReversed().map((each) => row(words, each)),
            },
          },
  };
}
