import { randomUUID } from "node:crypto";
import { readArchivedRules } from "@/db/read/archive-rules";
import { readClubGrouping } from "@/db/read/club-groups";
import { readImportBatch } from "@/db/read/import-batches";
import { readStudentNames } from "@/db/read/students";
import { insertArchive } from "@/db/write/archive";
import type { ImportInsert } from "@/db/write/imports";
import { mayBeArchive } from "@/lib/ingest/may-be-archive";
import type { AcademyOnFile } from "@/lib/ingest/plan-archive";
import { currentInstant } from "../clock";
import type { Viewer } from "../gate";
import { BESIDE, type FileReading } from "../import/import-worker";
import type { ArchiveResult, ArchiveTask, ImportDraft, ReadArchive } from "../worker/file-tasks";

/** Bytes that tell whether a file may be an archive, as base64 characters; a whole number of groups of four. */
const HEAD_CHARACTERS = 88;

/** An archive as it was read, and what of the academy that rests on. */
export interface PlannedArchive {
  readonly result: ArchiveResult;
  readonly onFile: AcademyOnFile;
}

function onFileOf({ db, scope }: Viewer): AcademyOnFile {
  return {
    students: readStudentNames(db, scope),
    rules: readArchivedRules(db, scope),
    grouping: readClubGrouping(db, scope),
  };
}

/** What an uploaded file is, should it be an archive, and what it would write here: read beside this thread. */
export async function readUploadedArchive(
  viewer: Viewer,
  draft: ImportDraft,
  want: ArchiveTask["want"],
  reading: FileReading = BESIDE,
): Promise<PlannedArchive> {
  const onFile = onFileOf(viewer);
  const head = Buffer.from(draft.file.slice(0, HEAD_CHARACTERS), "base64");
  if (!mayBeArchive(head)) return { result: { kind: "no-archive" }, onFile };
  return { result: await reading.archive({ draft, onFile, want }), onFile };
}

/**
 * Writes what the preview of an archive shows, all of it or nothing; the batch bears the given id and name. `stale`: the
 * academy has changed since the archive was read, which is to be done again.
 */
export function confirmArchive(
  viewer: Viewer,
  { contentHash, plan }: ReadArchive,
  onFile: AcademyOnFile,
  { batchId, who }: { readonly batchId: string; readonly who: string },
): ImportInsert | { readonly kind: "nothing-ready" } | { readonly kind: "stale" } {
  const { db, scope } = viewer;
  const batch = readImportBatch(db, scope, contentHash);
  if (batch) return { kind: "already-imported", batch };
  if (JSON.stringify(onFile) !== JSON.stringify(onFileOf(viewer))) return { kind: "stale" };
  if (!plan) return { kind: "nothing-ready" };
  return insertArchive(db, scope, plan, { now: currentInstant(), newId: randomUUID, door: "archive", batchId, who });
}
