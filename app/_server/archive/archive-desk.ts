import { createHash, randomUUID } from "node:crypto";
import { readArchivedRules } from "@/db/read/archive-rules";
import { readClubGrouping } from "@/db/read/club-groups";
import { readImportBatch } from "@/db/read/import-batches";
import { readStudentNames } from "@/db/read/students";
import { insertArchive } from "@/db/write/archive";
import type { ImportInsert } from "@/db/write/imports";
import { type Archive, archiveText } from "@/lib/domain/archive";
import { type ArchivePreview, planArchive } from "@/lib/ingest/plan-archive";
import { type ArchiveReading, readArchive } from "@/lib/ingest/read-archive";
import { currentInstant } from "../clock";
import type { Viewer } from "../gate";

/** An uploaded file as it came, base64, with the answers given so far. */
interface Upload {
  readonly fileName: string;
  readonly file: string;
  readonly answers: readonly (readonly [string, string])[];
}

/** What an uploaded file is, should it be an archive. */
export function archiveIn(upload: Upload): ArchiveReading {
  return readArchive(Uint8Array.from(Buffer.from(upload.file, "base64")));
}

function hashOf(archive: Archive): string {
  return createHash("sha256").update(archiveText(archive)).digest("hex");
}

/** What an archive would write into the viewer's academy, and what stands in its way. */
export function previewArchive(viewer: Viewer, upload: Upload, archive: Archive): ArchivePreview {
  const { db, scope } = viewer;
  return planArchive(
    archive,
    {
      students: readStudentNames(db, scope),
      rules: readArchivedRules(db, scope),
      grouping: readClubGrouping(db, scope),
    },
    { fileName: upload.fileName, contentHash: hashOf(archive) },
    new Map(upload.answers),
  );
}

/** Writes what the preview of an archive shows, all of it or nothing; the batch bears the given id and name. */
export function confirmArchive(
  viewer: Viewer,
  upload: Upload,
  archive: Archive,
  { batchId, who }: { readonly batchId: string; readonly who: string },
): ImportInsert | { readonly kind: "nothing-ready" } {
  const { db, scope } = viewer;
  const batch = readImportBatch(db, scope, hashOf(archive));
  if (batch) return { kind: "already-imported", batch };
  const { plan } = previewArchive(viewer, upload, archive);
  if (!plan) return { kind: "nothing-ready" };
  return insertArchive(db, scope, plan, { now: currentInstant(), newId: randomUUID, door: "archive", batchId, who });
}
