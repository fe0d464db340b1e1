"use server";

import { redirect } from "next/navigation";
import { requireViewer } from "../../../_server/gate";
import { giveStudents } from "../../../_server/people/charge-desk";

/** Gives students to a coach. */
export async function submitCharges(data: FormData): Promise<void> {
  const outcome = giveStudents(await requireViewer("/people/charges submitCharges"), data);
  redirect(outcome.kind === "given" ? "/people/charges?done=given" : `/people/charges?draft=${outcome.draftId}`);
}
