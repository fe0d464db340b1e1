"use server";

import { redirect } from "next/navigation";
import { requireViewer } from "../../../_server/gate";
import { makeKey, revokeKey } from "../../../_server/import/access-keys";

/** Makes a key; the page shows it once. */
export async function makeAccessKey(data: FormData): Promise<void> {
  const made = makeKey(await requireViewer(), String(data.get("name") ?? ""));
  redirect(made.kind === "made" ? `/settings/keys?made=${made.id}` : `/settings/keys?problem=${made.kind}`);
}

export async function revokeAccessKey(data: FormData): Promise<void> {
  revokeKey(await requireViewer(), String(data.get("id") ?? ""));
  redirect("/settings/keys");
}
