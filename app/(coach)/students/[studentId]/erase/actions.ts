"use server";

import { redirect } from "next/navigation";
import { whenDiskFails } from "../../../../_server/door/when-disk-fails";
import { eraseWhenMeant } from "../../../../_server/erase/erase-desk";
import { requireStudent } from "../../../../_server/gate";

function pageOf(data: FormData): string {
  return `/students/${encodeURIComponent(String(data.get("studentId") ?? ""))}/erase`;
}

/** Erases a student, or says what was missing. */
export async function submitErase(data: FormData): Promise<void> {
  const viewer = await requireStudent("/students/[studentId]/erase submitErase", String(data.get("studentId") ?? ""));
  const outcome = await whenDiskFails(pageOf(data), () => eraseWhenMeant(viewer, data));
  if (outcome.kind === "refused") redirect(`${pageOf(data)}?why=${outcome.why}`);
  redirect(`/students/erased?of=${outcome.erasureId}&traces=${outcome.traces}`);
}
