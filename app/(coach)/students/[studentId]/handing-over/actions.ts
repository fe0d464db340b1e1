"use server";

import { redirect } from "next/navigation";
import { whenDiskFails } from "../../../../_server/door/when-disk-fails";
import { requireStudent } from "../../../../_server/gate";
import { handOver, takeHandingBack } from "../../../../_server/people/handing-desk";
import { pageAfterHanding } from "../../../../_server/people/load-handing";

/** Hands the student over, or has them covered. */
export async function submitHanding(data: FormData): Promise<void> {
  const viewer = await requireStudent(
    "/students/[studentId]/handing-over submitHanding",
    String(data.get("studentId") ?? ""),
  );
  const outcome = handOver(viewer, data);
  const page = `/students/${viewer.student.studentId}/handing-over`;
  if (outcome.kind === "refused") redirect(`${page}?draft=${outcome.draftId}`);
  redirect(outcome.kind === "not-yours" ? page : pageAfterHanding(viewer));
}

/** Takes back what is planned, or ends a cover. */
export async function submitHandingBack(data: FormData): Promise<void> {
  const viewer = await requireStudent(
    "/students/[studentId]/handing-over submitHandingBack",
    String(data.get("studentId") ?? ""),
  );
  const page = `/students/${viewer.student.studentId}/handing-over`;
  const done = await whenDiskFails(page, () => takeHandingBack(viewer, String(data.get("chargeId") ?? "")));
  redirect(`${page}?done=${done === "done" ? "back" : "unchanged"}`);
}
