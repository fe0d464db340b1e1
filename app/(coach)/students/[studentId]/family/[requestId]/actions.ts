"use server";

import { notFound, redirect } from "next/navigation";
import * as desk from "../../../../../_server/family/link-desk";
import { requireStudent } from "../../../../../_server/gate";

/** Settles what a family asked for. */
export async function settleFamilyRequest(data: FormData): Promise<void> {
  const viewer = await requireStudent(
    "/students/[studentId]/family/[requestId] settleFamilyRequest",
    String(data.get("studentId") ?? ""),
  );
  const requestId = String(data.get("requestId") ?? "");
  if (!desk.hasRequest(viewer, requestId)) notFound();
  const outcome = desk.settleFamilyRequest(viewer, requestId, data);
  const page = `/students/${viewer.student.studentId}/family`;
  redirect(outcome.kind === "settled" ? `${page}?done=settled` : `${page}/${requestId}?draft=${outcome.draftId}`);
}
