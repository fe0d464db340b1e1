"use server";

import { redirect } from "next/navigation";
import { whenDiskFails } from "../../_server/door/when-disk-fails";
import { requireViewer } from "../../_server/gate";
import { mailLink } from "../../_server/people/mail-link";
import { revokeLink } from "../../_server/people/people-desk";

export async function revokeInvitation(data: FormData): Promise<void> {
  const viewer = await requireViewer("/people revokeInvitation");
  await whenDiskFails("/people", () => revokeLink(viewer, String(data.get("id") ?? "")));
  redirect("/people?done=revoked");
}

export async function sendInvitation(data: FormData): Promise<void> {
  const viewer = await requireViewer("/people sendInvitation");
  const link = String(data.get("link") ?? "");
  const outcome = await whenDiskFails("/people", () => mailLink(viewer, link));
  redirect(
    outcome.kind === "done" ? "/people?done=mailed" : `/people?made=${encodeURIComponent(link)}&mail=${outcome.why}`,
  );
}
