"use server";

import { redirect } from "next/navigation";
import { whenDiskFails } from "../../../_server/door/when-disk-fails";
import { requireViewer } from "../../../_server/gate";
import { revokeKey } from "../../../_server/import/access-keys";
import { makeKeyFrom } from "../../../_server/import/load-keys";

/** Makes a key; the page shows it once. */
export async function makeAccessKey(data: FormData): Promise<void> {
  const made = makeKeyFrom(await requireViewer("/settings/keys makeAccessKey"), data);
  redirect(made.kind === "made" ? `/settings/keys?made=${made.id}` : `/settings/keys?draft=${made.draftId}`);
}

export async function revokeAccessKey(data: FormData): Promise<void> {
  const viewer = await requireViewer("/settings/keys revokeAccessKey");
  await whenDiskFails("/settings/keys", () => revokeKey(viewer, String(data.get("id") ?? "")));
  redirect("/settings/keys");
}
