"use server";

import { redirect } from "next/navigation";
import { whenDiskFails } from "../../../_server/door/when-disk-fails";
import { requireViewer } from "../../../_server/gate";
import { giveStudents } from "../../../_server/people/charge-desk";

export async function submitCharges(data: FormData): Promise<void> {
  const viewer = await requireViewer("/people/charges submitCharges");
  const outcome = await whenDiskFails("/people/charges", () => giveStudents(viewer, data));
  redirect(outcome.kind === "done" ? "/people/charges?done=given" : `/people/charges?why=${outcome.why}`);
}
