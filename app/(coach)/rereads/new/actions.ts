"use server";

import { redirect } from "next/navigation";
import { requireViewer } from "../../../_server/gate";
import { drawAgain } from "../../../_server/reread/reread-desk";

/** Draws readings to be read again. */
export async function submitWish(data: FormData): Promise<void> {
  const outcome = drawAgain(await requireViewer("/rereads/new submitWish"), data);
  redirect(outcome.kind === "drawn" ? `/rereads/${outcome.drawId}` : `/rereads/new?draft=${outcome.draftId}`);
}
