"use server";

import { redirect } from "next/navigation";
import { whenDiskFails } from "../../../_server/door/when-disk-fails";
import { requireViewer } from "../../../_server/gate";
import { takeBackCoding } from "../../../_server/session/note-desk";

export async function submitTakeBack(data: FormData): Promise<void> {
  const viewer = await requireViewer("/settings/notes submitTakeBack");
  await whenDiskFails("/settings/notes", () => takeBackCoding(viewer, data));
  redirect("/settings/notes");
}
