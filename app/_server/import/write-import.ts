import { randomUUID } from "node:crypto";
import { inTransaction } from "@/db/client";
import { readAcademy } from "@/db/read/academies";
import type { ImportBatch } from "@/db/read/import-batches";
import { readStudent } from "@/db/read/students";
import { type ImportDoor, type ImportInsert, insertImport } from "@/db/write/imports";
import { updateDraftToKept } from "@/db/write/kept-files";
import { paperConsent } from "@/lib/domain/paper-consent";
import type { ImportPlan } from "@/lib/domain/session-entry";
import type { ImportPreview } from "@/lib/ingest/import-preview";
import { confirmArchive, readUploadedArchive } from "../archive/archive-desk";
import { currentInstant } from "../clock";
import { askedToday } from "../consent/consent-gate";
import { admitPerson, admitToStudent, type Viewer } from "../gate";
import { loadRules } from "../roster/load-verdicts";
import {
  dropFile,
  dropImport,
  type ImportDraft,
  keepAnswers,
  keepUpload,
  knownStudents,
  previewImport,
} from "./import-desk";
import { keepConflicts, keepOutcome } from "./import-outcome";
import { rememberSource } from "./import-source";
import type { FileReading } from "./import-worker";

/** The writing thread is alone once it writes, so a second reading there is the last; a small file may meet others. */
const MOST_READINGS_OF_ARCHIVE = 5;

/** What came of writing; nothing was written but with `imported`. */
export type ImportWritten = ImportInsert | { readonly kind: "nothing-ready" };

/** How an import is written: by which door, under which id, and who listens. */
export interface ImportHand {
  readonly door: ImportBatch["door"];
  readonly batchId: string;
  /** Who imports; kept with the batch. */
  readonly who: string;
  /** The draft that holds the file; null: none does. */
  readonly draftId: string | null;
  /** Who reads the file; absent: a worker beside this thread. */
  readonly reading?: FileReading;
  /** Awaited when the file is read and before anything is written. */
  readonly onReady?: (readings: number) => Promise<void>;
  /** As in `ImportDoor`. */
  readonly onSettled?: (readings: number) => void;
}

/**
 * Writes what the preview of a file shows, all of it or nothing, together with what is kept of it: the file for an undo,
 * the outcome for its page. Judges nothing. The same for every door, on whichever thread.
 */
export async function writeImport(viewer: Viewer, draft: ImportDraft, hand: ImportHand): Promise<ImportWritten> {
  const archived = await writeArchive(viewer, draft, hand);
  if (archived.kind !== "no-archive") return archived;
  const known = knownStudents(viewer);
  const preview = await previewImport(viewer, draft, hand.reading);
  if (!preview.plan) return { kind: "nothing-ready" };
  const plan = { ...preview.plan, answers: JSON.stringify({ ...JSON.parse(preview.plan.answers), who: hand.who }) };
  await hand.onReady?.(countReadings(plan));
  return whole(viewer, hand, () => {
    // Reading takes its time, and so may the door to the writing: a "no" of meanwhile holds. The preview says it.
    if (meant(plan, known) !== meant(plan, knownStudents(asOfNow(viewer)))) return { kind: "nothing-ready" };
    const written = insertImport(viewer.db, viewer.scope, plan, importDoor(viewer, hand, preview));
    if (written.kind === "imported") rememberSource(viewer, draft.fileName, preview);
    return written;
  });
}

/**
 * An archive is read before the writing begins, so that nobody waits for that; when the academy has changed meanwhile it is
 * read once more.
 */
async function writeArchive(
  viewer: Viewer,
  draft: ImportDraft,
  hand: ImportHand,
): Promise<ImportWritten | { readonly kind: "no-archive" }> {
  for (let tried = 0; tried < MOST_READINGS_OF_ARCHIVE; tried++) {
    const { result, onFile } = await readUploadedArchive(viewer, draft, "archive-plan", hand.reading);
    if (result.kind === "no-archive") return result;
    if (result.kind !== "archive") return { kind: "nothing-ready" };
    if (tried === 0) await hand.onReady?.(0);
    const written = whole(viewer, hand, () => confirmArchive(viewer, result, onFile, hand));
    if (written.kind !== "stale") return written;
  }
  throw new Error("the academy changed again and again while an archive was read");
}

/** Whom a plan names, and where their consents stand. */
function meant({ sessions, whose = [] }: ImportPlan, known: ReturnType<typeof knownStudents>): string {
  const aliases = new Set(sessions.map(({ alias }) => alias));
  const ids = new Set(whose.map(({ studentId }) => studentId));
  const named = known.filter(({ id, alias }) => aliases.has(alias) || ids.has(id));
  return JSON.stringify(named.map(({ id, alias, consent }) => [id, alias, consent]));
}

function countReadings({ sessions }: ImportPlan): number {
  return sessions.reduce(
    (sum, { session }) => session.swings.reduce((inner, swing) => inner + swing.readings.length, sum),
    0,
  );
}

function importDoor(viewer: Viewer, { door, batchId, onSettled }: ImportHand, preview: ImportPreview): ImportDoor {
  const { today, db } = viewer;
  const scopeOf = requireScopes(viewer);
  return {
    newId: randomUUID,
    now: currentInstant(),
    door,
    batchId,
    today,
    scopeOf,
    consents: preview.consents.map(({ studentId, givenBy }) => {
      const { birthYear } = readStudent(db, scopeOf(studentId));
      return { studentId, consent: paperConsent(givenBy, askedToday(viewer, { birthYear })) };
    }),
    ...(onSettled ? { onSettled } : {}),
  };
}

/** Writes, and keeps what belongs to it, in one transaction. */
function whole<Written extends ImportWritten | { readonly kind: "stale" }>(
  viewer: Viewer,
  { draftId }: ImportHand,
  write: () => Written,
): Written {
  const { db, scope } = viewer;
  return inTransaction(db, () => {
    const made = write();
    const written: ImportWritten | { readonly kind: "stale" } = made;
    if (written.kind === "nothing-ready" || written.kind === "stale") return made;
    if (written.kind === "imported") {
      if (draftId !== null) updateDraftToKept(db, scope, { draftId, batchId: written.batchId, now: currentInstant() });
      keepConflicts(viewer, written.batchId, written.conflicts);
    }
    // What brought nothing new leaves its outcome in the place of its file.
    if (draftId !== null) {
      if (written.kind !== "imported") dropFile(viewer, draftId);
      keepOutcome(viewer, draftId, written);
    }
    return made;
  });
}

/** The viewer with the charges as they are by now: whoever a coach's file has just added is in that coach's charge. */
function asOfNow(viewer: Viewer): Viewer {
  const { db, choice, userId, scope, words } = viewer;
  const found = { db, choice, academyId: scope.academyId };
  const now = userId === null ? null : admitPerson(found, userId, { choice, locale: words.locale });
  return now ?? viewer;
}

/** The proof for each student whom a batch names; null: the student isn't in the viewer's charge by now. */
export function findScopes(viewer: Viewer) {
  const now = asOfNow(viewer);
  return (studentId: string) => admitToStudent(now, studentId);
}

/** The proof for each student whom a file names. */
export function requireScopes(viewer: Viewer) {
  return (studentId: string) => {
    const scope = admitToStudent(viewer, studentId) ?? admitToStudent(asOfNow(viewer), studentId);
    if (!scope) throw new Error("a student of another academy");
    return scope;
  };
}

/** Writes a file on this thread, and judges anew. */
export async function confirmImport(
  viewer: Viewer,
  draft: ImportDraft,
  door: ImportBatch["door"] = "page",
): Promise<ImportWritten> {
  const draftId = keepUpload(viewer, draft.fileName, Buffer.from(draft.file, "base64"));
  keepAnswers(viewer, draftId, draft, new Map(draft.answers));
  const written = await writeImport(viewer, draft, { door, batchId: randomUUID(), who: viewer.name, draftId });
  dropImport(viewer, draftId);
  // An archive may have brought the academy's season along.
  if (written.kind === "imported") await loadRules({ ...viewer, academy: readAcademy(viewer.db, viewer.scope) });
  return written;
}
