import type { ImportSource } from "@/db/read/import-sources";
import type { ArchivedStudent } from "@/lib/domain/archive";
import type { ClubGrouping } from "@/lib/domain/club-grouping";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { ImportPlan } from "@/lib/domain/session-entry";
import type { ImportPreview, KnownStudent } from "@/lib/ingest/import-preview";
import type { AcademyOnFile, ArchivePreview } from "@/lib/ingest/plan-archive";
import type { ArchiveReading } from "@/lib/ingest/read-archive";
import type { ImportPage } from "@/lib/report/form-model";

/** An uploaded file with the answers given so far. */
export interface ImportDraft {
  readonly fileName: string;
  /** The file as it came, base64. */
  readonly file: string;
  readonly answers: readonly (readonly [string, string])[];
}

/** What a file is read with; plain data, the worker sees no database. */
export interface FileTask {
  readonly draft: ImportDraft;
  readonly draftId: string;
  readonly today: string;
  readonly students: readonly KnownStudent[];
  readonly fundamentals: readonly Fundamental[];
  readonly grouping: ClubGrouping;
  readonly sources: readonly ImportSource[];
  readonly reader: string;
  readonly locale: string;
  /** `plan`: all that would be written; `page`: the preview in words; `rest` and `rows`: those rows as CSV. */
  readonly want: "plan" | "page" | "rest" | "rows";
}

/** What a file is read with that may be an archive. */
export interface ArchiveTask {
  readonly draft: ImportDraft;
  readonly onFile: AcademyOnFile;
  /** `archive`: what the preview says; `archive-plan`: all that would be written too. */
  readonly want: "archive" | "archive-plan";
}

/** An archive as it was read; the plan crosses to another thread only where it is to be written. */
export interface ReadArchive extends ArchivePreview {
  readonly kind: "archive";
  readonly state: "ready" | "not-ready";
  readonly contentHash: string;
}

/** A file as an archive; `heavy` as in `FileResult`. */
export type ArchiveResult =
  | ReadArchive
  | Exclude<ArchiveReading, { readonly kind: "archive" }>
  | { readonly kind: "heavy" };

export type FileResult =
  | { readonly kind: "plan"; readonly preview: ImportPreview }
  | { readonly kind: "page"; readonly page: ImportPage }
  | { readonly kind: "csv"; readonly csv: string }
  /** The worker's memory or time ran out. */
  | { readonly kind: "heavy" };

/** A session of a plan, or a student of an archive's. */
export type PlanPart = ImportPlan["sessions"][number] | ArchivedStudent;

/** What the worker says: a part of a long plan, or the end. */
export type FileMessage =
  | { readonly kind: "part"; readonly part: readonly PlanPart[] }
  | { readonly kind: "end"; readonly result: FileResult | ArchiveResult }
  | { readonly kind: "failure"; readonly message: string };

/** Places in the shared numbers that tell how far the worker is. */
export const PROGRESS = { phase: 0, read: 1, of: 2 } as const;

/** Phases of reading a file. */
export const PHASES = { waiting: 0, opening: 1, reading: 2, settling: 3 } as const;
