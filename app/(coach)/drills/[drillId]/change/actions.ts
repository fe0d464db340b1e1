"use server";

import { notFound, redirect } from "next/navigation";
import { changeDrill } from "../../../../_server/drill/library-desk";
import { requireViewer } from "../../../../_server/gate";

/** Describes a drill of the library anew, or says that it is offered no more. */
export async function submitDrillChange(data: FormData): Promise<void> {
  const viewer = await requireViewer("/drills/[drillId]/change submitDrillChange");
  const drillId = String(data.get("drill") ?? "");
  const outcome = changeDrill(viewer, drillId, data);
  if (outcome.kind === "unknown") notFound();
  const page = `/drills/${encodeURIComponent(drillId)}/change`;
  redirect(outcome.kind === "kept" ? page : `${page}?draft=${outcome.draftId}`);
}
