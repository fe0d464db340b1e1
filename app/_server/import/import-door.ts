import { createHash } from "node:crypto";
import { type ImportBatch, readImportBatch, readImportBatchById } from "@/db/read/import-batches";
import type { ImportInsert } from "@/db/write/imports";
import { FILE_LIMIT_MB } from "@/lib/ingest/decode-text";
import type { ImportPreview } from "@/lib/ingest/import-preview";
import { uploadKind } from "@/lib/ingest/upload-kind";
import { wordsFor } from "@/lib/words/catalogue";
import { readUploadedArchive } from "../archive/archive-desk";
import { sayUnreadable } from "../archive/archive-page";
import { diskFailureOf } from "../door/disk-failure";
import { sayFailure } from "../door/quiet-failures";
import { readLimited } from "../door/read-limited";
import { UPLOAD_LIMIT } from "../door/upload-limit";
import type { Viewer } from "../gate";
import { loadAcademyRules } from "../season/student-record";
import { type KeyHolder, noteKeyUsed } from "./access-keys";
import { withConsentBy } from "./consent-answers";
import { refuseAtDoor } from "./door-answer";
import { tellArchive } from "./door-archive";
import { admitAtDoor } from "./door-gate";
import { tellPreview } from "./door-preview";
import { dropImport, type ImportDraft, keepAnswers, keepUpload, previewImport } from "./import-desk";
import { findOutcome } from "./import-outcome";
import type { Speaker } from "./import-page";
import { whenWritable } from "./write-gate";
import { awaitWritten, findJobOf, type ImportJob, progressOf, startImport } from "./write-jobs";

/** Requests with a file that are worked on at one time: each may hold 32 MB several times over. */
const AT_ONCE = 8;
/** A program that sends waits so long for its answer; then it is told where to ask. */
const WAIT_MS = 60_000;
const LONGEST_NAME = 200;
/** What can't be opened as a table at all; everything else has rows that can be told of. */
const NO_TABLE = new Set(["not-a-csv", "workbook"]);

const words = wordsFor("en");
const KEY = Symbol.for("proofband.door-busy");
const shared = globalThis as { [KEY]?: number };

/** What is told of an import that is on file. */
function tellBatch(batch: ImportBatch) {
  const { id, fileName, rows, readings, createdAt, door, undoneAt } = batch;
  return { batch: id, fileName, rows, readings, importedAt: createdAt, door, undoneAt };
}

/** `?answer=student:nia=new-right`, or a whole field name as the page has it. */
function answersIn(query: URLSearchParams): [string, string][] {
  return query.getAll("answer").flatMap((given): [string, string][] => {
    const equals = given.indexOf("=");
    if (equals < 1) return [];
    const name = given.slice(0, equals);
    return [[/^answer[-:]/.test(name) ? name : `answer:${name}`, given.slice(equals + 1)]];
  });
}

function speakerOf(viewer: Viewer): Speaker {
  return { words, ...loadAcademyRules(viewer.db, viewer.scope, viewer.academy) };
}

async function preview(viewer: Viewer, draft: ImportDraft): Promise<Response> {
  const { result: archive } = await readUploadedArchive(viewer, draft, "archive");
  if (archive.kind === "archive")
    return Response.json({ state: "preview", saved: false, ...tellArchive(words, archive) });
  if (archive.kind !== "no-archive") {
    const issues = sayUnreadable(words, archive).map((says) => ({ code: archive.kind, says }));
    return refuseAtDoor(words, "nothing-ready", {}, { state: "preview", saved: false, archive: true, issues });
  }
  const read: ImportPreview = await previewImport(viewer, draft);
  const told = { state: "preview", saved: false, ...tellPreview(speakerOf(viewer), read) };
  if (read.issues.some((issue) => issue.row === null && NO_TABLE.has(issue.code)))
    return refuseAtDoor(words, "not-a-table", {}, told);
  return Response.json(told);
}

/** That somebody else brought the same content is all that is told of their import. */
function tellAlready({ db, scope }: Viewer, batch: ImportBatch): Response {
  const told = readImportBatchById(db, scope, batch.id) ? tellBatch(batch) : {};
  return Response.json({ state: "already-imported", saved: true, ...told });
}

function tellOutcome(viewer: Viewer, outcome: ImportInsert): Response {
  if (outcome.kind === "already-imported") return tellAlready(viewer, outcome.batch);
  if (outcome.kind === "unknown-students")
    return refuseAtDoor(words, "unknown-students", { aliases: outcome.aliases.join(", ") });
  const { kind: _kind, batchId, conflicts, ...counts } = outcome;
  return Response.json(
    { state: "imported", saved: true, batch: batchId, ...counts, conflicts },
    { status: 201, headers: { location: `/api/door/import/${batchId}` } },
  );
}

function tellJob(job: ImportJob): Response {
  const status = `/api/door/import/${job.batchId}`;
  const told = { state: job.state, saved: false, batch: job.batchId, status, ...progressOf(job) };
  return Response.json(told, { status: 202, headers: { location: status } });
}

async function write(viewer: Viewer, who: string, draft: ImportDraft, bytes: Uint8Array): Promise<Response> {
  await whenWritable();
  const draftId = keepUpload(viewer, draft.fileName, bytes);
  keepAnswers(viewer, draftId, draft, new Map(draft.answers));
  const job = startImport(viewer, draftId, { door: "http", who });
  await awaitWritten(job, WAIT_MS);
  const outcome = findOutcome(viewer, draftId);
  if (!outcome && !["done", "failed", "stopped", "judging"].includes(job.state)) return tellJob(job);
  await whenWritable();
  dropImport(viewer, draftId);
  if (outcome) return tellOutcome(viewer, outcome);
  if (job.outcome !== "nothing-ready") return refuseAtDoor(words, "failed");
  const told = await preview(viewer, draft);
  return told.status === 200 ? refuseAtDoor(words, "nothing-ready", {}, await told.json()) : told;
}

async function receive(request: Request, { viewer, who }: KeyHolder): Promise<Response> {
  const body = await readLimited(request, UPLOAD_LIMIT);
  if (body.kind === "too-big") return refuseAtDoor(words, "too-big", { limit: FILE_LIMIT_MB });
  if (body.kind === "broken") return refuseAtDoor(words, "half");
  const { bytes } = body;
  const kind = uploadKind(bytes);
  if (kind === "empty") return refuseAtDoor(words, "empty");
  if (kind !== "table") return refuseAtDoor(words, "not-a-table");
  const hash = createHash("sha256").update(bytes).digest("hex");
  const before = readImportBatch(viewer.db, viewer.scope, hash);
  if (before) return tellAlready(viewer, before);
  const { searchParams: query } = new URL(request.url);
  const named = (query.get("file") ?? "").normalize("NFC").trim().slice(0, LONGEST_NAME);
  const draft: ImportDraft = {
    fileName: named === "" ? words.say("door.unnamed", { who }) : named,
    file: Buffer.from(bytes).toString("base64"),
    answers: withConsentBy(answersIn(query), query.get("consent") ?? ""),
  };
  return query.get("confirm") === "yes" ? write(viewer, who, draft, bytes) : preview(viewer, draft);
}

/** Takes a file from another program: without `confirm=yes` it is only read, and what it needs is told. */
export async function receiveAtDoor(request: Request): Promise<Response> {
  const holder = await admitAtDoor(words, request);
  if (holder instanceof Response) return holder;
  if ((shared[KEY] ?? 0) >= AT_ONCE) return refuseAtDoor(words, "slow-down", { seconds: 5 });
  shared[KEY] = (shared[KEY] ?? 0) + 1;
  try {
    await whenWritable();
    noteKeyUsed(holder);
    return await receive(request, holder);
  } catch (error) {
    process.stderr.write(`door: ${error instanceof Error ? sayFailure(error) : "failed"}\n`);
    const failure = diskFailureOf(error);
    return refuseAtDoor(words, failure === null ? "failed" : `disk-${failure}`);
  } finally {
    shared[KEY] -= 1;
  }
}

/** How an import is: on its way, on file, or taken back. */
export async function tellAtDoor(request: Request, batchId: string): Promise<Response> {
  const holder = await admitAtDoor(words, request);
  if (holder instanceof Response) return holder;
  const { viewer } = holder;
  const batch = readImportBatchById(viewer.db, viewer.scope, batchId);
  const job = findJobOf(viewer, batchId);
  if (batch) {
    const state = batch.undoneAt !== null ? "undone" : job?.state === "judging" ? "judging" : "imported";
    return Response.json({ state, saved: batch.undoneAt === null, ...tellBatch(batch) });
  }
  return job ? tellJob(job) : refuseAtDoor(words, "absent");
}

/** A file is sent by POST alone. */
export function refuseMethod(): Response {
  return refuseAtDoor(words, "method");
}
