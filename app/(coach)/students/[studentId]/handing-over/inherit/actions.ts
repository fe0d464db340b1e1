"use server";

import { redirect } from "next/navigation";
import { whenDiskFails } from "../../../../../_server/door/when-disk-fails";
import { requireStudent } from "../../../../../_server/gate";
import { pressInheritedSeen } from "../../../../../_server/people/inherited";
import { startTenTwice } from "../../../../../_server/people/ten-twice-part";

/** Puts the notice of an inherited student away. */
export async function submitInherited(data: FormData): Promise<void> {
  const viewer = await requireStudent(
    "/students/[studentId]/handing-over/inherit submitInherited",
    String(data.get("studentId") ?? ""),
  );
  const page = `/students/${viewer.student.studentId}/handing-over/inherit`;
  await whenDiskFails(page, () => pressInheritedSeen(viewer));
  redirect(`${page}?done=seen`);
}

/** Draws ten readings for both readers. */
export async function submitTenTwice(data: FormData): Promise<void> {
  const viewer = await requireStudent(
    "/students/[studentId]/handing-over/inherit submitTenTwice",
    String(data.get("studentId") ?? ""),
  );
  const page = `/students/${viewer.student.studentId}/handing-over/inherit`;
  const outcome = await whenDiskFails(page, () => startTenTwice(viewer, data));
  redirect(outcome.kind === "drawn" ? `/rereads/${outcome.drawId}` : `${page}?why=${outcome.why}`);
}
