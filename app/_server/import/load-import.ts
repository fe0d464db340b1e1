import { notFound } from "next/navigation";
import type { ArchiveImportPage } from "@/lib/report/archive-import-model";
import type { ImportPage } from "@/lib/report/form-model";
import { buildArchivePage } from "../archive/archive-page";
import { csvResponse } from "../door/download";
import { refusalResponse } from "../door/refusal-page";
import { requireViewer, type Viewer } from "../gate";
import { findImportDraft, findImportHead, readUpload } from "./import-desk";
import { followImport, peekImport } from "./import-jobs";
import { buildProgressPage, sayProgress } from "./import-progress";
import { buildUploadPage } from "./import-upload-page";

const PROBLEMS = ["no-file"];

/** The page on which a file is chosen. */
export function loadUploadPage(viewer: Viewer, problem: string | undefined): ImportPage {
  const known = PROBLEMS.find((each) => each === problem);
  return buildUploadPage(viewer.words, known ? viewer.words.say(`import-page.problem.${known}`) : "");
}

/** The preview of an uploaded file, or how far its reading is; there is no such page for a file of another academy. */
export async function loadPreviewPage(viewer: Viewer, draftId: string): Promise<ImportPage> {
  const head = findImportHead(viewer, draftId);
  const view = head && (await followImport(viewer, draftId, head));
  if (!view) notFound();
  return view.state === "done" ? view.page : buildProgressPage(viewer.words, draftId, head.fileName, view);
}

/** The preview of an uploaded archive; null: the file is something else. */
export async function loadArchivePreview(viewer: Viewer, draftId: string): Promise<ArchiveImportPage | null> {
  // A file that is read as a table already is no archive; it may be long, and isn't fetched again for the question.
  if (peekImport(viewer, draftId)) return null;
  const draft = findImportDraft(viewer, draftId);
  return draft ? buildArchivePage(viewer, draftId, draft) : null;
}

/** How far the reading of a file is, for a page that is open on it. */
export async function sendProgress(draftId: string): Promise<Response> {
  const viewer = await requireViewer("GET /api/import/[draftId]/progress");
  if (!findImportHead(viewer, draftId)) notFound();
  const view = peekImport(viewer, draftId);
  const running = view?.state === "running";
  return Response.json({
    state: running ? "running" : "ended",
    text: running ? sayProgress(viewer.words, view) : "",
    read: running ? view.read : 0,
    of: running ? view.of : 0,
  });
}

/** Rows of an upload as CSV: those that stay out with their reasons, or all with what becomes of each. */
export async function downloadRows(draftId: string, want: "rest" | "rows"): Promise<Response> {
  const viewer = await requireViewer(`GET /api/import/[draftId]/${want}`);
  const draft = findImportDraft(viewer, draftId);
  if (!draft) notFound();
  const result = await readUpload(viewer, draft, want);
  return result.kind === "csv"
    ? csvResponse(`${want}.csv`, result.csv)
    : refusalResponse(viewer.words, 422, viewer.words.say("import.issue.heavy"));
}
