"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { requireViewer } from "../../_server/gate";
import { markSeen } from "../../_server/roster/mark-seen";

/** Puts away what is newly proved, until something else is. */
export async function pressSeen(): Promise<void> {
  await markSeen(await requireViewer());
  revalidatePath("/students");
  redirect("/students");
}
