import type { SavedPage } from "@/lib/report/saved-model";
import { mayPass } from "../access/matrix";
import type { StudentViewer } from "../gate";
import { loadBareSaved } from "./load-bare-saved";
import { loadSaved } from "./load-saved";

/** What a saved session changed; for whoever reads no report only that it was saved. */
export async function loadSavedFor(viewer: StudentViewer, sessionId: string): Promise<SavedPage> {
  return mayPass("/students/[studentId]", viewer.roles)
    ? loadSaved(viewer, sessionId)
    : loadBareSaved(viewer, sessionId);
}
