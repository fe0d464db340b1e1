"use server";

import { redirect } from "next/navigation";
import { requireViewer } from "../../../_server/gate";
import { drawForSecond, saveRereads } from "../../../_server/reread/reread-desk";

/** Keeps what was typed into a draw, and ends it where that is ticked. */
export async function submitRereads(data: FormData): Promise<void> {
  const drawId = String(data.get("drawId") ?? "");
  const outcome = saveRereads(await requireViewer("/rereads/[drawId] submitRereads"), drawId, data);
  const page = `/rereads/${encodeURIComponent(drawId)}`;
  redirect(outcome.kind === "refused" ? `${page}?draft=${outcome.draftId}` : page);
}

/** Gives the same readings to a second reader. */
export async function submitSecond(data: FormData): Promise<void> {
  const drawId = String(data.get("drawId") ?? "");
  const outcome = drawForSecond(await requireViewer("/rereads/[drawId] submitSecond"), drawId, data);
  if (outcome.kind === "drawn") redirect(`/rereads/${outcome.drawId}`);
  const page = `/rereads/${encodeURIComponent(drawId)}`;
  redirect(outcome.kind === "refused" ? `${page}?draft=${outcome.draftId}` : page);
}
