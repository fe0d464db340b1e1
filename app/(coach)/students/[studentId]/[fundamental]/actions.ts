"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { requireStudent } from "../../../../_server/gate";
import { decideAsking } from "../../../../_server/season/asking-desk";

/** Stops a question, takes it up again, or takes the plan that would settle it. */
export async function submitAsking(data: FormData): Promise<void> {
  const viewer = await requireStudent(String(data.get("studentId") ?? ""));
  const page = await decideAsking(viewer, data);
  revalidatePath(page);
  redirect(page);
}
