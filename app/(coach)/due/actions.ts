"use server";

import { redirect } from "next/navigation";
import { whenDiskFails } from "../../_server/door/when-disk-fails";
import { requireStudent } from "../../_server/gate";
import { noteReminded } from "../../_server/plan/plan-desk";

/** Notes that a family was reminded of a film that it promised. */
export async function pressReminder(data: FormData): Promise<void> {
  const viewer = await requireStudent("/due pressReminder", String(data.get("studentId") ?? ""));
  await whenDiskFails("/due", () => noteReminded(viewer, String(data.get("planId") ?? "")));
  redirect("/due");
}
