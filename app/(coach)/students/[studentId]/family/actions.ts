"use server";

import { redirect } from "next/navigation";
import { whenDiskFails } from "../../../../_server/door/when-disk-fails";
import * as desk from "../../../../_server/family/link-desk";
import { requireStudent } from "../../../../_server/gate";

/** Makes a link for the family. */
export async function makeFamilyLink(data: FormData): Promise<void> {
  const viewer = await requireStudent(
    "/students/[studentId]/family makeFamilyLink",
    String(data.get("studentId") ?? ""),
  );
  const outcome = desk.makeFamilyLink(viewer, data);
  const page = `/students/${viewer.student.studentId}/family`;
  redirect(outcome.kind === "made" ? `${page}?made=${outcome.id}` : `${page}?draft=${outcome.draftId}`);
}

/** Lets a link end later. */
export async function renewFamilyLink(data: FormData): Promise<void> {
  const viewer = await requireStudent(
    "/students/[studentId]/family renewFamilyLink",
    String(data.get("studentId") ?? ""),
  );
  const page = `/students/${viewer.student.studentId}/family`;
  const done = await whenDiskFails(page, () => desk.renewFamilyLink(viewer, String(data.get("id") ?? "")));
  redirect(`${page}?done=${done}`);
}

/** Takes a link back. */
export async function revokeFamilyLink(data: FormData): Promise<void> {
  const viewer = await requireStudent(
    "/students/[studentId]/family revokeFamilyLink",
    String(data.get("studentId") ?? ""),
  );
  const page = `/students/${viewer.student.studentId}/family`;
  const done = await whenDiskFails(page, () => desk.revokeFamilyLink(viewer, String(data.get("id") ?? "")));
  redirect(`${page}?done=${done}`);
}
