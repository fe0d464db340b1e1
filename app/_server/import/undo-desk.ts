import { readImportBatchById } from "@/db/read/import-batches";
import type { Viewer } from "../gate";
import { awaitJob, startUndo } from "./write-jobs";

/** Takes an import back when whoever asks is sure; what came of it stands on the import's own page. */
export async function undoBatch(
  viewer: Viewer,
  batchId: string,
  sure: "sure" | "unsure",
): Promise<"not-there" | "not-sure" | "started"> {
  const batch = readImportBatchById(viewer.db, viewer.scope, batchId);
  if (!batch) return "not-there";
  if (sure === "unsure") return "not-sure";
  await awaitJob(startUndo(viewer, batchId, batch.readings));
  return "started";
}
