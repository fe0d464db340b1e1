import { notFound } from "next/navigation";
import type { ArchiveImportPage } from "@/lib/report/archive-import-model";
import type { ImportPage } from "@/lib/report/form-model";
import { buildArchivePage } from "./archive-page";
import { csvResponse } from "./download";
import { requireViewer, type Viewer } from "./gate";
import { findImportDraft, previewImport } from "./import-desk";
import { buildPreviewPage, buildUploadPage, type Speaker } from "./import-page";
import { restOfImport } from "./import-rest";
import { loadAcademyRules } from "./student-record";

function speakerOf(viewer: Viewer): Speaker {
  return { words: viewer.words, ...loadAcademyRules(viewer.db, viewer.scope, viewer.academy) };
}

const PROBLEMS = ["no-file"];

/** The page on which a file is chosen. */
export function loadUploadPage(viewer: Viewer, problem: string | undefined): ImportPage {
  const known = PROBLEMS.find((each) => each === problem);
  return buildUploadPage(viewer.words, known ? viewer.words.say(`import-page.problem.${known}`) : "");
}

/** The preview of an uploaded file; there is no such page for a file of another academy. */
export function loadPreviewPage(viewer: Viewer, draftId: string): ImportPage {
  const draft = findImportDraft(viewer, draftId);
  if (!draft) notFound();
  return buildPreviewPage(speakerOf(viewer), draftId, draft, previewImport(viewer, draft));
}

/** The preview of an uploaded archive; null: the file is something else. */
export function loadArchivePreview(viewer: Viewer, draftId: string): ArchiveImportPage | null {
  const draft = findImportDraft(viewer, draftId);
  return draft ? buildArchivePage(viewer, draftId, draft) : null;
}

/** The rows that stay out, with their reasons. */
export async function downloadRest(draftId: string): Promise<Response> {
  const viewer = await requireViewer();
  const draft = findImportDraft(viewer, draftId);
  if (!draft) notFound();
  return csvResponse("rest.csv", restOfImport(speakerOf(viewer), draft, previewImport(viewer, draft)));
}
