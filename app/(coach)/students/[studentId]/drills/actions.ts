"use server";

import { redirect } from "next/navigation";
import { whenDiskFails } from "../../../../_server/door/when-disk-fails";
import { requireStudent } from "../../../../_server/gate";
import { moveWaiting } from "../../../../_server/season/waiting-desk";

/** Marks that a fundamental waits without a drill on purpose, or ends it. */
export async function pressWaiting(data: FormData): Promise<void> {
  const viewer = await requireStudent("/students/[studentId]/drills pressWaiting", String(data.get("studentId") ?? ""));
  const page = `/students/${viewer.student.studentId}/drills`;
  await whenDiskFails(page, () => moveWaiting(viewer, data));
  redirect(page);
}
