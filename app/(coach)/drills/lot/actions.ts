"use server";

import { redirect } from "next/navigation";
import { whenDiskFails } from "../../../_server/door/when-disk-fails";
import { keepLooked } from "../../../_server/draft/submit-once";
import { FAIR_FORM, planLot, stepLot } from "../../../_server/fair/fair-desk";
import { requireViewer } from "../../../_server/gate";
import { loadRules } from "../../../_server/roster/load-verdicts";

const PAGE = "/drills/lot";

/** Plans a test of two drills by the lot. */
export async function submitFairTest(data: FormData): Promise<void> {
  const outcome = planLot(await requireViewer("/drills/lot submitFairTest"), data);
  redirect(outcome.kind === "planned" ? `${PAGE}?done=planned` : `${PAGE}?draft=${outcome.draftId}`);
}

/** The same page anew: how many students it takes follows from what is typed. */
export async function workOutFairTest(data: FormData): Promise<void> {
  const viewer = await requireViewer("/drills/lot workOutFairTest");
  redirect(`${PAGE}?draft=${keepLooked(viewer, FAIR_FORM, data)}`);
}

/** Takes the planned look that is due, or ends a test. */
export async function submitFairStep(data: FormData): Promise<void> {
  const viewer = await requireViewer("/drills/lot submitFairStep");
  await loadRules(viewer);
  const done = await whenDiskFails(PAGE, () => stepLot(viewer, data));
  redirect(`${PAGE}?done=${done}`);
}
