import { createHash, randomUUID } from "node:crypto";
import { inTransaction } from "@/db/client";
import { readDraft, readDraftLength } from "@/db/read/drafts";
import { readStudentNames } from "@/db/read/students";
import { deleteDraft, insertDraft } from "@/db/write/drafts";
import type { ImportPreview } from "@/lib/ingest/import-preview";
import { refusedPreview } from "@/lib/ingest/refused-preview";
import { nameKey } from "@/lib/ingest/text-key";
import { currentInstant } from "../clock";
import { standingsOf } from "../consent/consent-gate";
import type { Viewer } from "../gate";
import { chargesInForce } from "../people/charges-in-force";
import { loadAcademyRules } from "../season/student-record";
import type { FileResult, FileTask, ImportDraft } from "../worker/file-tasks";
import { sourcesOf } from "./import-source";
import { BESIDE, type FileReading } from "./import-worker";

export type { ImportDraft } from "../worker/file-tasks";

const KIND = "import";
/** The file lies in a draft of its own: what asks how far the reading is needn't read it. */
const FILE_KIND = "import-file";
const fileId = (draftId: string): string => `${draftId}.file`;

/** An upload without its file. */
export type ImportHead = Omit<ImportDraft, "file">;

function keep(viewer: Viewer, id: string, kind: string, body: string): void {
  insertDraft(viewer.db, viewer.scope, { id, kind, body, updatedAt: currentInstant() });
}

/** Keeps an uploaded file as a draft; nothing of it is in the readings yet. */
export function keepUpload(viewer: Viewer, fileName: string, bytes: Uint8Array, id: string = randomUUID()): string {
  const head: ImportHead = { fileName, answers: [] };
  const { buffer, byteOffset, byteLength } = bytes;
  inTransaction(viewer.db, () => {
    keep(viewer, fileId(id), FILE_KIND, Buffer.from(buffer, byteOffset, byteLength).toString("base64"));
    keep(viewer, id, KIND, JSON.stringify(head));
  });
  return id;
}

/** The upload of that id without its file; null: there is none in this academy. */
export function findImportHead(viewer: Viewer, draftId: string): ImportHead | null {
  const row = readDraft(viewer.db, viewer.scope, draftId);
  if (!row || row.kind !== KIND) return null;
  const head = JSON.parse(row.body) as ImportHead;
  return { ...head, answers: waiting().get(nameOf(viewer, draftId)) ?? head.answers };
}

/** The draft of that id with its file; null: there is none in this academy. */
export function findImportDraft(viewer: Viewer, draftId: string): ImportDraft | null {
  const head = findImportHead(viewer, draftId) as Partial<ImportDraft> | null;
  if (!head?.fileName || !head.answers) return null;
  const file = head.file ?? readDraft(viewer.db, viewer.scope, fileId(draftId))?.body;
  return file === undefined ? null : { fileName: head.fileName, answers: head.answers, file };
}

/** How long the file of an upload is, in characters as kept. */
export function fileLength(viewer: Viewer, draftId: string): number {
  return readDraftLength(viewer.db, viewer.scope, fileId(draftId));
}

// On the global object: the bundler may load this file more than once in one process.
const WAITING = Symbol.for("proofband.waiting-answers");
const shared = globalThis as { [WAITING]?: Map<string, ImportHead["answers"]> };

/** Answers that the disk took nothing of, by academy and upload. */
function waiting(): Map<string, ImportHead["answers"]> {
  shared[WAITING] ??= new Map();
  return shared[WAITING];
}

const nameOf = ({ scope }: Viewer, draftId: string): string => `${scope.academyId} ${draftId}`;

/**
 * Keeps the answers given so far beside the file; what the disk doesn't take waits in memory and stands on the page again.
 *
 * @throws what the disk says where it took nothing
 */
export function keepAnswers(
  viewer: Viewer,
  draftId: string,
  head: ImportHead,
  answers: ReadonlyMap<string, string>,
): void {
  const given: ImportHead = { fileName: head.fileName, answers: [...answers] };
  waiting().set(nameOf(viewer, draftId), given.answers);
  keep(viewer, draftId, KIND, JSON.stringify(given));
  waiting().delete(nameOf(viewer, draftId));
}

/** Lets go of all answers that wait in memory for an academy's uploads. */
export function forgetAnswers(academyId: string): void {
  for (const name of waiting().keys()) if (name.startsWith(`${academyId} `)) waiting().delete(name);
}

/** Lets go of a file that isn't needed any more; what stands in the place of its draft stays. */
export function dropFile(viewer: Viewer, draftId: string): void {
  deleteDraft(viewer.db, viewer.scope, fileId(draftId));
}

export function dropImport(viewer: Viewer, draftId: string): void {
  waiting().delete(nameOf(viewer, draftId));
  dropFile(viewer, draftId);
  deleteDraft(viewer.db, viewer.scope, draftId);
}

/** Who has whom in charge, by the student's id: it tells apart those who bear one alias, and is asked where there are any. */
function coachNames(viewer: Viewer, students: readonly { readonly alias: string }[]): ReadonlyMap<string, string> {
  const names = new Set(students.map(({ alias }) => nameKey(alias)));
  return names.size === students.length ? new Map() : namesInCharge(viewer);
}

function namesInCharge(viewer: Viewer): ReadonlyMap<string, string> {
  const { charges, coaches } = chargesInForce(viewer);
  const names = new Map(coaches.map(({ userId, name }) => [userId, name]));
  const own = charges.filter(({ kind }) => kind === "own");
  return new Map(own.map(({ studentId, coachId }) => [studentId, names.get(coachId) ?? ""]));
}

/** Everybody whom the viewer may see, as a file that names them is read. */
export function knownStudents(viewer: Viewer): FileTask["students"] {
  const standings = standingsOf(viewer, "measure");
  const students = readStudentNames(viewer.db, viewer.scope);
  const coaches = coachNames(viewer, students);
  return students.map(({ id, alias, hand, birthYear }) => ({
    ...{ id, alias, hand, birthYear },
    consent: standings.get(id)?.kind ?? "none",
    coach: coaches.get(id) ?? "",
  }));
}

/** All but the file that the reading of an upload rests on. */
export function fileContext(viewer: Viewer): Omit<FileTask, "draft" | "draftId" | "want"> {
  const { fundamentals, grouping } = loadAcademyRules(viewer.db, viewer.scope, viewer.academy);
  return {
    today: viewer.today,
    students: knownStudents(viewer),
    fundamentals,
    grouping,
    sources: sourcesOf(viewer),
    reader: viewer.name,
    locale: viewer.words.locale,
  };
}

/** A digest of all that the reading of an upload rests on beside its file. */
export function readingKey(context: Omit<FileTask, "draft" | "draftId" | "want">, head: ImportHead): string {
  return createHash("sha256")
    .update(JSON.stringify([context, head.answers]))
    .digest("hex");
}

/** Reads an upload once: beside this thread, unless somebody else reads. */
export function readUpload(
  viewer: Viewer,
  draft: ImportDraft,
  want: FileTask["want"],
  reading: FileReading = BESIDE,
): Promise<FileResult> {
  return reading.table({ ...fileContext(viewer), draft, draftId: "", want });
}

/**
 * What a file would write, and what it needs answered: the same for the page, the command and the door. The file is
 * read beside the server's thread; nothing is written.
 */
export async function previewImport(
  viewer: Viewer,
  draft: ImportDraft,
  reading: FileReading = BESIDE,
): Promise<ImportPreview> {
  const result = await readUpload(viewer, draft, "plan", reading);
  if (result.kind === "plan") return result.preview;
  if (result.kind === "heavy") return refusedPreview("heavy");
  throw new Error(`a file came back as ${result.kind}`);
}
