"use server";

import { redirect } from "next/navigation";
import { whenDiskFails } from "../../_server/door/when-disk-fails";
import { requireViewer } from "../../_server/gate";
import { revokeLink } from "../../_server/people/people-desk";

export async function revokeInvitation(data: FormData): Promise<void> {
  const viewer = await requireViewer("/people revokeInvitation");
  await whenDiskFails("/people", () => revokeLink(viewer, String(data.get("id") ?? "")));
  redirect("/people?done=revoked");
}
