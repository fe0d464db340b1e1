import { strToU8, type Zippable, zipSync } from "fflate";
import { archiveText } from "@/lib/domain/archive";
import { ARCHIVE_ENTRY } from "@/lib/ingest/read-archive";
import { archiveReadme } from "@/lib/report/archive-readme";
import type { ArchiveTable } from "@/lib/report/archive-table";
import { archiveTables } from "@/lib/report/archive-tables";
import { archiveToldTables } from "@/lib/report/archive-told-tables";
import { buildCsv } from "@/lib/report/csv";
import type { Viewer } from "../gate";
import type { LoadedArchive } from "./load-archive";

// What a spreadsheet needs to take the text for what it is.
const BOM = "\uFEFF";

// No entry tells when it was looked at.
const NO_TIME = new Date(1980, 0, 1);

/** Every table of an archive, with what is told beside the records in it. */
export function tablesOf({ archive, told }: Pick<LoadedArchive, "archive" | "told">): readonly ArchiveTable[] {
  const aliases = new Map(archive.students.map((student) => [student.id, student.alias]));
  return [...archiveTables(archive), ...archiveToldTables(({ studentId }) => aliases.get(studentId) ?? null, told)];
}

/** The archive as one zip: a page of explanations, a table a kind, and everything in one structure. No file's name is personal. */
export function packArchive(viewer: Pick<Viewer, "words" | "today">, loaded: LoadedArchive): Uint8Array {
  const tables = tablesOf(loaded);
  const { withoutPain } = loaded;
  const files: Zippable = {
    "README.txt": strToU8(archiveReadme(viewer.words, loaded.archive, tables, { day: viewer.today, withoutPain })),
    [ARCHIVE_ENTRY]: strToU8(archiveText(loaded.archive)),
  };
  for (const { name, columns, rows } of tables) files[`${name}.csv`] = strToU8(BOM + buildCsv(columns, rows));
  return zipSync(files, { level: 6, mtime: NO_TIME });
}
