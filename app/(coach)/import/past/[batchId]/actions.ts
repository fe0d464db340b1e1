"use server";

import { notFound, redirect } from "next/navigation";
import { whenDiskFails } from "../../../../_server/door/when-disk-fails";
import { requireViewer } from "../../../../_server/gate";
import { undoBatch } from "../../../../_server/import/undo-desk";

/** Takes an import back, once its box is ticked. */
export async function undoImport(data: FormData): Promise<void> {
  const viewer = await requireViewer("/import/past/[batchId] undoImport");
  const batchId = String(data.get("batchId") ?? "");
  const sure = data.get("sure") === "yes" ? "sure" : "unsure";
  const outcome = await whenDiskFails(`/import/past/${batchId}`, () => undoBatch(viewer, batchId, sure));
  if (outcome === "not-there") notFound();
  redirect(`/import/past/${batchId}${outcome === "not-sure" ? "?problem=not-sure" : ""}`);
}
