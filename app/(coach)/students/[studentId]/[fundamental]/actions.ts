"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { whileSignedIn } from "../../../../_server/access/while-signed-in";
import { whenDiskFails } from "../../../../_server/door/when-disk-fails";
import { requireStudent } from "../../../../_server/gate";
import { decideAsking } from "../../../../_server/season/asking-desk";
import { loadPlanAnswer } from "../../../../_server/season/load-fundamental";

/** Stops a question, takes it up again, or takes the plan that would settle it. */
export async function submitAsking(data: FormData): Promise<void> {
  const viewer = await requireStudent(
    "/students/[studentId]/[fundamental] submitAsking",
    String(data.get("studentId") ?? ""),
  );
  const student = `/students/${viewer.student.studentId}`;
  const page = await whenDiskFails(student, () => decideAsking(viewer, data));
  revalidatePath(page);
  redirect(page);
}

/** What the films that a form asks about would tell; nothing is kept. */
export async function askFilms(data: FormData) {
  const textOf = (name: string): string => String(data.get(name) ?? "");
  return whileSignedIn(null, async () => {
    const viewer = await requireStudent("/students/[studentId]/[fundamental] askFilms", textOf("studentId"));
    const films = { films: textOf("films"), swings: textOf("swings"), care: textOf("care") };
    return loadPlanAnswer(viewer, textOf("fundamentalId"), textOf("club"), films);
  });
}
