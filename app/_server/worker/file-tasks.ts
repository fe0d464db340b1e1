import type { ImportSource } from "@/db/read/import-sources";
import type { ClubGrouping } from "@/lib/domain/club-grouping";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { ImportPlan } from "@/lib/domain/session-entry";
import type { ImportPreview, KnownStudent } from "@/lib/ingest/import-preview";
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

export type FileResult =
  | { readonly kind: "plan"; readonly preview: ImportPreview }
  | { readonly kind: "page"; readonly page: ImportPage }
  | { readonly kind: "csv"; readonly csv: string }
  /** The worker's memory or time ran out. */
  | { readonly kind: "heavy" };

/** What the worker says: a part of a long plan, or the end. */
export type FileMessage =
  | { readonly kind: "sessions"; readonly sessions: ImportPlan["sessions"] }
  | { readonly kind: "end"; readonly result: FileResult }
  | { readonly kind: "failure"; readonly message: string };

/** Places in the shared numbers that tell how far the worker is. */
export const PROGRESS = { phase: 0, read: 1, of: 2 } as const;

/** Phases of reading a file. */
export const PHASES = { waiting: 0, opening: 1, reading: 2, settling: 3 } as const;
