"use server";

import { redirect } from "next/navigation";
import { whenDiskFails } from "../../../../../_server/door/when-disk-fails";
import { requireStudent } from "../../../../../_server/gate";
import { dropReadBack, saveReadBack } from "../../../../../_server/season/read-back-desk";

/** Keeps what was typed into a read-back, and ends it where that is ticked. */
export async function submitReadBack(data: FormData): Promise<void> {
  const viewer = await requireStudent(
    "/students/[studentId]/read-back/[readBackId] submitReadBack",
    String(data.get("studentId") ?? ""),
  );
  const readBackId = String(data.get("readBackId") ?? "");
  const outcome = await saveReadBack(viewer, readBackId, data);
  const page = `/students/${viewer.student.studentId}/read-back/${encodeURIComponent(readBackId)}`;
  redirect(outcome.kind === "refused" ? `${page}?draft=${outcome.draftId}` : page);
}

/** Gives a read-back up. */
export async function submitReadBackDrop(data: FormData): Promise<void> {
  const viewer = await requireStudent(
    "/students/[studentId]/read-back/[readBackId] submitReadBackDrop",
    String(data.get("studentId") ?? ""),
  );
  const page = `/students/${viewer.student.studentId}/read-back`;
  await whenDiskFails(page, () => dropReadBack(viewer, String(data.get("readBackId") ?? "")));
  redirect(page);
}
