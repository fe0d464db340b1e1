import type { Words } from "@/lib/words/catalogue";
import type { HappenPart } from "./happen-model";

/** What a part that tells every change of something rests on. */
export interface ChangeHistory {
  readonly explains: string;
  /** Labels of the columns. */
  readonly columns: readonly string[];
  /** A row of cells for each change, the oldest first. */
  readonly rows: readonly (readonly string[])[];
}

/** Every change of something with what it was before, the latest first. */
export function buildChangeHistory(words: Words, { explains, columns, rows }: ChangeHistory): HappenPart {
  return {
    margin: words.say("library.history"),
    explains,
    heading: words.say("library.history.heading", { changes: rows.length }),
    paragraphs: [],
    facts: [],
    table:
      rows.length === 0
        ? null
        : {
            caption: words.say("library.history.caption"),
            columns: columns.map((label) => ({ label, align: "start" as const })),
            rows: rows.toReversed().map((cells) => ({ cells, tone: "plain" as const })),
          },
    open: null,
  };
}
