import { createHash, randomUUID } from "node:crypto";
import { inTransaction } from "@/db/client";
import { readAcademy } from "@/db/read/academies";
import { readDraft } from "@/db/read/drafts";
import { readAcademyConsents, readStudentNames } from "@/db/read/students";
import { deleteDraft, insertDraft } from "@/db/write/drafts";
import { type ImportInsert, insertImport } from "@/db/write/imports";
import { insertConsent } from "@/db/write/students";
import { consentInForce } from "@/lib/domain/student";
import type { ImportPreview } from "@/lib/ingest/import-preview";
import { parseAnswers } from "@/lib/ingest/parse-answers";
import { parseImport } from "@/lib/ingest/parse-import";
import { archiveIn, confirmArchive } from "./archive-desk";
import { currentInstant } from "./clock";
import { admitToStudent, type Viewer } from "./gate";
import { loadRules } from "./load-verdicts";
import { loadAcademyRules } from "./student-record";

/** Files beyond this are refused with its name. */
export const UPLOAD_LIMIT_MB = 32;

const KIND = "import";

/** An uploaded file with the answers given so far. */
export interface ImportDraft {
  readonly fileName: string;
  /** The file as it came, base64. */
  readonly file: string;
  readonly answers: readonly (readonly [string, string])[];
}

/** Keeps an uploaded file as a draft; nothing of it is in the readings yet. */
export function keepUpload(viewer: Viewer, fileName: string, bytes: Uint8Array): string {
  const id = randomUUID();
  const body: ImportDraft = { fileName, file: Buffer.from(bytes).toString("base64"), answers: [] };
  insertDraft(viewer.db, viewer.scope, { id, kind: KIND, body: JSON.stringify(body), updatedAt: currentInstant() });
  return id;
}

/** The draft of that id; null: there is none in this academy. */
export function findImportDraft(viewer: Viewer, draftId: string): ImportDraft | null {
  const row = readDraft(viewer.db, viewer.scope, draftId);
  return row && row.kind === KIND ? (JSON.parse(row.body) as ImportDraft) : null;
}

/** Keeps the answers given so far beside the file. */
export function keepAnswers(
  viewer: Viewer,
  draftId: string,
  draft: ImportDraft,
  answers: ReadonlyMap<string, string>,
): void {
  const body: ImportDraft = { ...draft, answers: [...answers] };
  insertDraft(viewer.db, viewer.scope, {
    id: draftId,
    kind: KIND,
    body: JSON.stringify(body),
    updatedAt: currentInstant(),
  });
}

export function dropImport(viewer: Viewer, draftId: string): void {
  deleteDraft(viewer.db, viewer.scope, draftId);
}

/** What a file would write, and what it needs answered. */
export function previewImport(viewer: Viewer, draft: ImportDraft): ImportPreview {
  const bytes = Uint8Array.from(Buffer.from(draft.file, "base64"));
  const consents = readAcademyConsents(viewer.db, viewer.scope);
  const { fundamentals, grouping } = loadAcademyRules(viewer.db, viewer.scope, viewer.academy);
  return parseImport({
    fileName: draft.fileName,
    bytes,
    contentHash: createHash("sha256").update(bytes).digest("hex"),
    today: viewer.today,
    students: readStudentNames(viewer.db, viewer.scope).map((student) => ({
      id: student.id,
      alias: student.alias,
      hand: student.hand,
      birthYear: student.birthYear,
      hasConsent: consentInForce(
        consents.filter((consent) => consent.studentId === student.id),
        "measure",
        viewer.today,
      ),
    })),
    fundamentals,
    grouping,
    answers: parseAnswers(new Map(draft.answers)),
    defaults: { reader: viewer.name },
  });
}

/** Writes what the preview shows, all of it or nothing, and judges anew. */
export async function confirmImport(
  viewer: Viewer,
  draft: ImportDraft,
): Promise<ImportInsert | { readonly kind: "nothing-ready" }> {
  const archived = archiveIn(draft);
  if (archived.kind === "archive") {
    const outcome = confirmArchive(viewer, draft, archived.archive);
    // An empty academy takes the archive's season over, so it is asked for anew before anything is judged.
    if (outcome.kind === "imported") await loadRules({ ...viewer, academy: readAcademy(viewer.db, viewer.scope) });
    return outcome;
  }
  if (archived.kind !== "no-archive") return { kind: "nothing-ready" };
  const preview = previewImport(viewer, draft);
  if (!preview.plan) return { kind: "nothing-ready" };
  const now = currentInstant();
  const scopeOf = (studentId: string) => {
    const scope = admitToStudent(viewer, studentId);
    if (!scope) throw new Error("a student of another academy");
    return scope;
  };
  const { plan, consents } = preview;
  const written = inTransaction(viewer.db, () => {
    for (const { studentId, givenBy } of consents) {
      const consent = { kind: "measure", givenBy, from: viewer.today, until: null, withdrawnOn: null } as const;
      insertConsent(viewer.db, scopeOf(studentId), consent, { newId: randomUUID, now });
    }
    return insertImport(viewer.db, viewer.scope, plan, { newId: randomUUID, now, scopeOf });
  });
  if (written.kind === "imported") await loadRules(viewer);
  return written;
}
