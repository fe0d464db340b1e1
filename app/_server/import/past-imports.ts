import { type ImportBatch, readImportBatches } from "@/db/read/import-batches";
import { deleteKeptFiles } from "@/db/write/kept-files";
import type { TextPage } from "@/lib/report/form-model";
import type { PastImportsPage } from "@/lib/report/past-import-model";
import { sayDay } from "@/lib/words/day-words";
import { linkTables } from "../archive/table-links";
import { dayIn, readClock, timeIn } from "../clock";
import type { Viewer } from "../gate";

/** The file of an import is kept so long, in days: within a month a wrong file is found out, and 32 MB a file add up. */
export const FILE_DAYS = 30;

const DAY_MS = 24 * 3600 * 1000;

/** What an import's log says beside its rows. */
export interface KeptAnswers {
  readonly answers?: readonly { readonly id: string; readonly option: string }[];
  readonly changed?: readonly KeptEntry[];
  readonly left?: readonly KeptEntry[];
  /** Who imported. */
  readonly who?: string;
}

/** A note or issue as kept; its rows are among the arguments. */
export interface KeptEntry {
  readonly code: string;
  readonly column: string | null;
  readonly args: Readonly<Record<string, string | number>>;
}

/** The log of an import; one that an older Proofband wrote otherwise is empty. */
export function readKeptAnswers(batch: ImportBatch): KeptAnswers {
  try {
    const kept = JSON.parse(batch.answers) as KeptAnswers;
    return Array.isArray(kept) || kept === null ? {} : kept;
  } catch {
    return {};
  }
}

/** An instant where the academy is: “26 Nov 2026, 17:20”. */
export function sayMoment({ words, academy }: Viewer, instant: string): string {
  const at = new Date(instant);
  const day = sayDay(words, dayIn(academy.zone, at), "day-year");
  return words.say("past.moment", { day, time: timeIn(academy.zone, at) });
}

/** By whom and by which door an import came. */
export function sayDoor({ words }: Viewer, batch: ImportBatch): string {
  const who = readKeptAnswers(batch).who ?? words.say("past.who-unknown");
  return words.say("past.by-door", { door: batch.door, who });
}

/** Drops the files of imports that are older than they are kept for; asked when the server starts and with each import. */
export function dropOldFiles({ db, scope }: Pick<Viewer, "db" | "scope">): number {
  return deleteKeptFiles(db, scope, new Date(readClock().getTime() - FILE_DAYS * DAY_MS).toISOString());
}

function sayState(viewer: Viewer, batch: ImportBatch): string {
  const { words } = viewer;
  if (batch.undoneAt === null) return words.say("past.state.on-file");
  const day = sayDay(words, dayIn(viewer.academy.zone, new Date(batch.undoneAt)), "day-year");
  return words.say("past.state.undone", { day });
}

/** The way from the import to what was imported before. */
export function loadPastDoor({ words, db, scope }: Viewer): TextPage["parts"][number] {
  return {
    margin: words.say("past.margin"),
    heading: words.say("past.title"),
    paragraphs: [words.say("past.door", { count: readImportBatches(db, scope).length })],
    links: [{ href: "/import/past", label: words.say("past.link") }],
  };
}

/** Everything that was imported, latest first. */
export function loadPastImports(viewer: Viewer): PastImportsPage {
  const { words } = viewer;
  const batches = readImportBatches(viewer.db, viewer.scope);
  const number = (count: number): string => String(count);
  const columns = [
    { name: "file", align: "start" },
    { name: "when", align: "start" },
    { name: "by", align: "start" },
    { name: "rows", align: "end" },
    { name: "readings", align: "end" },
    { name: "state", align: "start" },
  ] as const;
  return linkTables(
    words,
    "past-imports",
    {},
    {
      title: words.say("past.title"),
      lede: words.say("past.lede"),
      back: { href: "/import", label: words.say("past.back") },
      margin: words.say("past.margin"),
      table:
        batches.length === 0
          ? null
          : {
              caption: words.say("past.caption"),
              columns: columns.map(({ name, align }) => ({ label: words.say(`past.${name}`), align })),
              rows: batches.map((batch) => ({
                tone: batch.undoneAt === null ? "plain" : "quiet",
                cells: [
                  batch.fileName,
                  sayMoment(viewer, batch.createdAt),
                  sayDoor(viewer, batch),
                  number(batch.rows),
                  number(batch.readings),
                  sayState(viewer, batch),
                ],
              })),
            },
      linkLabel: words.say("past.open"),
      links: batches.map((batch) => ({
        href: `/import/past/${batch.id}`,
        label: words.say("past.open-one", { file: batch.fileName }),
      })),
      empty: words.say("past.none"),
    },
  );
}
