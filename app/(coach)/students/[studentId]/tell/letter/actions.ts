"use server";

import { redirect } from "next/navigation";
import { keepLetterForm, tellLetter } from "../../../../../_server/family/letter-desk";
import { requireStudent } from "../../../../../_server/gate";

/** Keeps a letter as told. */
export async function submitLetter(data: FormData): Promise<void> {
  const viewer = await requireStudent(
    "/students/[studentId]/tell/letter submitLetter",
    String(data.get("studentId") ?? ""),
  );
  const outcome = await tellLetter(viewer, data);
  const page = `/students/${viewer.student.studentId}/tell`;
  redirect(
    outcome.kind === "refused" ? `${page}/letter?draft=${outcome.draftId}#change` : `${page}?done=${outcome.kind}`,
  );
}

/** The same page anew: the letter follows from what is chosen and written. */
export async function workOutLetter(data: FormData): Promise<void> {
  const viewer = await requireStudent(
    "/students/[studentId]/tell/letter workOutLetter",
    String(data.get("studentId") ?? ""),
  );
  redirect(`/students/${viewer.student.studentId}/tell/letter?draft=${keepLetterForm(viewer, data)}`);
}
