"use server";

import { redirect } from "next/navigation";
import { requireViewer } from "../../../_server/gate";
import { takeBackCoding } from "../../../_server/session/note-desk";

export async function submitTakeBack(data: FormData): Promise<void> {
  takeBackCoding(await requireViewer(), data);
  redirect("/settings/notes");
}
