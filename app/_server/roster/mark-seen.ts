import { insertSeen } from "@/db/write/seen";
import { currentInstant } from "../clock";
import { type Viewer, viewerKey } from "../gate";
import { loadProofKeys } from "./load-roster";

/** Keeps that this viewer has seen everything that is proved now. */
export async function markSeen(viewer: Viewer): Promise<void> {
  const keys = await loadProofKeys(viewer);
  insertSeen(viewer.db, viewer.scope, {
    viewer: viewerKey(viewer),
    seenAt: currentInstant(),
    asOf: viewer.today,
    body: JSON.stringify(keys),
  });
}
