import { createHash } from "node:crypto";
import { readImportBatches } from "@/db/read/import-batches";
import { type ImportSource, readImportSources } from "@/db/read/import-sources";
import { deleteImportSource, insertImportSource } from "@/db/write/import-sources";
import type { ImportPreview, RememberedSource } from "@/lib/ingest/import-preview";
import { parseAnswers } from "@/lib/ingest/parse-answers";
import { sourceAnswers } from "@/lib/ingest/source-answers";
import { wordKey } from "@/lib/ingest/text-key";
import { currentInstant } from "../clock";
import type { Viewer } from "../gate";

/** A source is known by its column heads, in their order, spelling of capitals and blanks aside. */
export function sourceFingerprint(heads: readonly string[]): string {
  return createHash("sha256")
    .update(JSON.stringify(heads.map(wordKey)))
    .digest("hex");
}

/**
 * How files are read here is the academy's; what a file was called, which may be a student's name, is told to whoever may open
 * its import.
 */
export function sourcesOf(viewer: Viewer): readonly ImportSource[] {
  const named = new Set(readImportBatches(viewer.db, viewer.scope).map(({ fileName }) => fileName));
  return readImportSources(viewer.db, viewer.scope).map((source) => ({
    ...source,
    fileName: named.has(source.fileName) ? source.fileName : "",
  }));
}

/** What was said of the last file with these heads. */
export function rememberedSource(sources: readonly ImportSource[], heads: readonly string[]): RememberedSource | null {
  if (heads.length === 0) return null;
  const fingerprint = sourceFingerprint(heads);
  const found = sources.find((source) => source.fingerprint === fingerprint);
  if (!found) return null;
  const kept = JSON.parse(found.answers) as [string, string][];
  const answers = parseAnswers(kept.map(([id, option]) => [`answer:${id}`, option] as const));
  return answers.size === 0 ? null : { answers, fileName: found.fileName, day: found.updatedAt.slice(0, 10) };
}

/** Keeps how an imported file was read, for the next one with the same heads. */
export function rememberSource(viewer: Viewer, fileName: string, preview: ImportPreview): void {
  if (preview.heads.length === 0) return;
  const kept = [...sourceAnswers(preview)].map(([id, { option }]) => [id, option]);
  insertImportSource(viewer.db, viewer.scope, {
    fingerprint: sourceFingerprint(preview.heads),
    fileName,
    answers: JSON.stringify(kept),
    updatedAt: currentInstant(),
  });
}

export function forgetSource(viewer: Viewer, fingerprint: string): void {
  deleteImportSource(viewer.db, viewer.scope, fingerprint);
}
