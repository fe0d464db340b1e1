"use server";

import { redirect } from "next/navigation";
import { whenDiskFails } from "../../../../_server/door/when-disk-fails";
import { requireStudent } from "../../../../_server/gate";
import { logPractice, movePracticeBack } from "../../../../_server/season/practice-desk";

/** Logs practice of one day or several. */
export async function submitPractice(data: FormData): Promise<void> {
  const viewer = await requireStudent(
    "/students/[studentId]/practice submitPractice",
    String(data.get("studentId") ?? ""),
  );
  const outcome = logPractice(viewer, data);
  const page = `/students/${viewer.student.studentId}/practice`;
  redirect(outcome.kind === "logged" ? `${page}?week=${outcome.week}` : `${page}?draft=${outcome.draftId}`);
}

/** Takes an entry back, or puts it back. */
export async function submitPracticeBack(data: FormData): Promise<void> {
  const viewer = await requireStudent(
    "/students/[studentId]/practice submitPracticeBack",
    String(data.get("studentId") ?? ""),
  );
  const page = `/students/${viewer.student.studentId}/practice`;
  const wish = data.get("wish") === "put" ? "put" : "take";
  await whenDiskFails(page, () => movePracticeBack(viewer, String(data.get("practiceId") ?? ""), wish));
  redirect(page);
}
