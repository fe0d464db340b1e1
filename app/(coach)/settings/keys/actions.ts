"use server";

import { redirect } from "next/navigation";
import { requireViewer } from "../../../_server/gate";
import { revokeKey } from "../../../_server/import/access-keys";
import { makeKeyFrom } from "../../../_server/import/load-keys";

/** Makes a key; the page shows it once. */
export async function makeAccessKey(data: FormData): Promise<void> {
  const made = makeKeyFrom(await requireViewer(), data);
  redirect(made.kind === "made" ? `/settings/keys?made=${made.id}` : `/settings/keys?draft=${made.draftId}`);
}

export async function revokeAccessKey(data: FormData): Promise<void> {
  revokeKey(await requireViewer(), String(data.get("id") ?? ""));
  redirect("/settings/keys");
}
