import { randomUUID } from "node:crypto";
import { readArchivedRules } from "@/db/read/archive-rules";
import { readClubGrouping } from "@/db/read/club-groups";
import { readImportBatch } from "@/db/read/import-batches";
import { readSessionIds } from "@/db/read/sessions";
import { readStudentNames, readStudents } from "@/db/read/students";
import { insertArchive } from "@/db/write/archive";
import type { ImportInsert } from "@/db/write/imports";
import type { ErasedLine } from "@/lib/domain/erasure";
import { mayBeArchive } from "@/lib/ingest/may-be-archive";
import type { AcademyOnFile } from "@/lib/ingest/plan-archive";
import { currentInstant } from "../clock";
import { erasedDigest, erasedListOf, readErasedList } from "../erase/erased-list";
import { type Viewer, wholeAcademy } from "../gate";
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
  const students = readStudentNames(db, scope);
  const seen = new Set(students.map(({ id }) => id)).size;
  return {
    sessions: readSessionIds(db, scope),
    others: readStudents(db, wholeAcademy(scope)).length - seen,
    students,
    rules: readArchivedRules(db, scope),
    grouping: readClubGrouping(db, scope),
  };
}

/** What a plan rests on; sessions that are added meanwhile make it no other one. */
function restsOn({ sessions: _sessions, ...rest }: AcademyOnFile): string {
  return JSON.stringify(rest);
}

function findErased({ db, scope }: Viewer, studentId: string): ErasedLine | undefined {
  return readErasedList(erasedListOf(db.file)).get(erasedDigest({ academyId: scope.academyId, studentId }));
}

/** Tells of students in an archive who were erased here: only a family that wants it brings them back. */
function withErased(viewer: Viewer, result: ArchiveResult): ArchiveResult {
  if (result.kind !== "archive") return result;
  const erased = result.students.flatMap(({ studentId, alias }) => {
    const line = findErased(viewer, studentId);
    return line ? [{ code: "erased", args: { alias, day: line.day } }] : [];
  });
  return { ...result, differences: [...erased, ...result.differences] };
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
  return { result: withErased(viewer, await reading.archive({ draft, onFile, want })), onFile };
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
  if (restsOn(onFile) !== restsOn(onFileOf(viewer))) return { kind: "stale" };
  if (!plan) return { kind: "nothing-ready" };
  const reader = { name: viewer.name, day: viewer.today };
  const stamp = { now: currentInstant(), newId: randomUUID, door: "archive", batchId, who, reader } as const;
  // Under the number of an erased student the next start would erase again.
  const isErased = (studentId: string): boolean => findErased(viewer, studentId) !== undefined;
  return insertArchive(db, scope, plan, { ...stamp, isErased });
}
