import type { ClubGrouping } from "@/lib/domain/club-grouping";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { RecordChange } from "@/lib/domain/record-change";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayFundamental } from "@/lib/words/say-fundamental";
import type { TableModel } from "./basic-model";
import { buildCsv } from "./csv";
import { emptyPart, type Press, type RecordPage } from "./record-page-model";
import { sayRecordChange } from "./say-record-change";

/** A value as it stood: as typed, or taken out. */
export interface StoodText {
  readonly kind: "change" | "void";
  readonly typed: string;
}

/** Something that was done to what is on file of a student. */
export type HistoryEntry = { readonly at: string; readonly day: string; readonly who: string; readonly why: string } & (
  | {
      readonly kind: "correction";
      readonly sessionDay: string;
      readonly swing: number;
      readonly fundamentalId: string;
      readonly before: StoodText;
      readonly after: StoodText;
    }
  | { readonly kind: "added"; readonly sessionDay: string; readonly readings: number }
  | {
      readonly kind: "record";
      readonly change: RecordChange;
      readonly sessionDay: string | null;
      /** Null: it stands. */
      readonly undoneDay: string | null;
    }
);

/** Everything that the history of a student's record rests on. */
export interface HistorySource {
  readonly student: { readonly id: string; readonly alias: string };
  /** Latest first. */
  readonly entries: readonly HistoryEntry[];
  readonly fundamentals: readonly Fundamental[];
  readonly grouping: ClubGrouping;
  readonly aliases: ReadonlyMap<string, string>;
}

interface SaidEntry {
  readonly what: string;
  readonly where: string;
  readonly from: string;
  readonly to: string;
}

function sayStood(words: Words, stood: StoodText): string {
  return stood.kind === "void" ? words.say("correct.taken-out") : stood.typed;
}

/** One entry in words: what was done, to what, how it stood before and after. */
export function sayEntry(
  words: Words,
  entry: HistoryEntry,
  source: Omit<HistorySource, "entries" | "student">,
): SaidEntry {
  const day = entry.sessionDay === null ? "" : sayDay(words, entry.sessionDay, "full");
  if (entry.kind === "added")
    return {
      what: words.say("history.added"),
      where: day,
      from: "",
      to: words.say("history.added.readings", { readings: entry.readings }),
    };
  if (entry.kind === "record") return { where: day, ...sayRecordChange(words, entry.change, source) };
  const fundamental = source.fundamentals.find((each) => each.id === entry.fundamentalId);
  return {
    what: words.say(entry.after.kind === "void" ? "history.taken-out" : "history.correction"),
    where: words.say("history.cell", {
      day,
      swing: entry.swing,
      name: fundamental ? sayFundamental(words, fundamental) : entry.fundamentalId,
    }),
    from: sayStood(words, entry.before),
    to: sayStood(words, entry.after),
  };
}

/** Entries as a table, latest first; an undone change is quiet and says by whom. */
export function historyTable(
  words: Words,
  entries: readonly HistoryEntry[],
  source: Omit<HistorySource, "entries" | "student">,
): TableModel {
  return {
    caption: words.say("history.caption"),
    columns: ["when", "what", "where", "from", "to", "who", "why"].map((name) => ({
      label: words.say(`history.column.${name}`),
      align: "start",
    })),
    rows: entries.map((entry) => {
      const said = sayEntry(words, entry, source);
      const undone = entry.kind === "record" && entry.undoneDay !== null;
      const what = undone
        ? words.say("history.undone", {
            what: said.what,
            who: entry.change.undoneBy ?? "",
            day: sayDay(words, entry.undoneDay ?? entry.day, "full"),
          })
        : said.what;
      return {
        cells: [sayDay(words, entry.day, "full"), what, said.where, said.from, said.to, entry.who, entry.why],
        tone: undone ? "quiet" : "plain",
      };
    }),
  };
}

/** A button for every change that stands; whether it can still be undone is asked when it is pressed. */
export function undoPresses(
  words: Words,
  entries: readonly HistoryEntry[],
  source: Omit<HistorySource, "entries">,
): readonly Press[] {
  return entries.flatMap((entry) => {
    if (entry.kind !== "record" || entry.change.undoneAt !== null) return [];
    const { what, from, to } = sayEntry(words, entry, source);
    return [
      {
        label: words.say("history.undo", { what }),
        explains: words.say("history.undo.explains", { day: sayDay(words, entry.day, "full"), what, from, to }),
        hidden: [
          { name: "studentId", value: source.student.id },
          { name: "changeId", value: String(entry.change.id) },
        ],
      },
    ];
  });
}

/** Everything that was ever changed in a student's record, latest first. */
export function buildHistory(words: Words, source: HistorySource, told: string): RecordPage {
  const { student, entries } = source;
  const presses = undoPresses(words, entries, source);
  const { id, alias } = student;
  return {
    title: words.say("history.title", { alias, changes: entries.length }),
    documentTitle: words.say("document-title", { page: words.say("history.document-title") }),
    lede: words.say("history.lede"),
    back: { href: `/students/${id}`, label: words.say("fundamental-page.back", { alias }) },
    notices: told === "" ? [] : [told],
    ask: null,
    parts: [
      {
        ...emptyPart(words.say("history.part"), words.say("history.heading", { changes: entries.length })),
        tables: entries.length === 0 ? [] : [historyTable(words, entries, source)],
        paragraphs: entries.length === 0 ? [words.say("history.none")] : [],
        links: [
          { href: `/api/students/${id}/history/csv`, label: words.say("download.csv") },
          { href: `/students/${id}/known`, label: words.say("history.known") },
          { href: `/students/${id}/merge`, label: words.say("history.merge") },
        ],
      },
      ...(presses.length === 0
        ? []
        : [
            {
              ...emptyPart(
                words.say("history.undo.part"),
                words.say("history.undo.heading", { changes: presses.length }),
              ),
              explains: words.say("history.undo.part.explains"),
              presses,
            },
          ]),
    ],
  };
}

/** The same as a file, one entry a row. */
export function buildHistoryCsv(words: Words, source: HistorySource): string {
  return buildCsv(
    ["at", "kind", "session", "swing", "fundamental", "before", "after", "who", "why", "undone at", "undone by"],
    source.entries.map((entry) => {
      const said = sayEntry(words, entry, source);
      const cell = entry.kind === "correction" ? [entry.swing, entry.fundamentalId] : [null, null];
      const kind = entry.kind === "record" ? entry.change.kind : entry.kind;
      const undone = entry.kind === "record" ? [entry.change.undoneAt, entry.change.undoneBy] : [null, null];
      return [entry.at, kind, entry.sessionDay, ...cell, said.from, said.to, entry.who, entry.why, ...undone];
    }),
  );
}
