"use server";

import { redirect } from "next/navigation";
import { addDrill } from "../../../_server/drill/library-desk";
import { requireViewer } from "../../../_server/gate";

/** Adds a drill to the academy's library. */
export async function submitLibraryDrill(data: FormData): Promise<void> {
  const outcome = addDrill(await requireViewer("/drills/library submitLibraryDrill"), data);
  redirect(outcome.kind === "kept" ? "/drills/library" : `/drills/library?draft=${outcome.draftId}`);
}
