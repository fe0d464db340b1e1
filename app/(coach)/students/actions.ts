"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { whenDiskFails } from "../../_server/door/when-disk-fails";
import { requireViewer } from "../../_server/gate";
import { markSeen } from "../../_server/roster/mark-seen";

/** Puts away what is newly proved, until something else is. */
export async function pressSeen(): Promise<void> {
  const viewer = await requireViewer("/students pressSeen");
  await whenDiskFails("/students", () => markSeen(viewer));
  revalidatePath("/students");
  redirect("/students");
}
