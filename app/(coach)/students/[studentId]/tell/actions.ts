"use server";

import { redirect } from "next/navigation";
import { whenDiskFails } from "../../../../_server/door/when-disk-fails";
import { chooseLanguage } from "../../../../_server/family/language-desk";
import { keepTold, moveToldBack } from "../../../../_server/family/tell-desk";
import { requireStudent } from "../../../../_server/gate";

/** Keeps a message or a file as told. */
export async function submitTold(data: FormData): Promise<void> {
  const viewer = await requireStudent("/students/[studentId]/tell submitTold", String(data.get("studentId") ?? ""));
  const page = `/students/${viewer.student.studentId}/tell`;
  const done = await whenDiskFails(page, () => keepTold(viewer, data));
  redirect(`${page}?done=${done}`);
}

/** Says that a text was not sent after all, or that it was. */
export async function submitToldBack(data: FormData): Promise<void> {
  const viewer = await requireStudent("/students/[studentId]/tell submitToldBack", String(data.get("studentId") ?? ""));
  const page = `/students/${viewer.student.studentId}/tell`;
  const done = await whenDiskFails(page, () => moveToldBack(viewer, data));
  redirect(`${page}?done=${done}`);
}

/** Chooses in which language the family reads. */
export async function submitFamilyLanguage(data: FormData): Promise<void> {
  const viewer = await requireStudent(
    "/students/[studentId]/tell submitFamilyLanguage",
    String(data.get("studentId") ?? ""),
  );
  const page = `/students/${viewer.student.studentId}/tell`;
  const done = await whenDiskFails(page, () => chooseLanguage(viewer, data));
  redirect(`${page}?done=${done}`);
}
