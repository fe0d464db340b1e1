"use server";

import { redirect } from "next/navigation";
import { whenDiskFails } from "../../../_server/door/when-disk-fails";
import { requireViewer } from "../../../_server/gate";
import { mailLink } from "../../../_server/people/mail-link";
import { changeRoles, endAccess, makePasswordLink } from "../../../_server/people/people-desk";

function pageOf(userId: string): string {
  return `/people/${encodeURIComponent(userId)}`;
}

export async function submitRoles(data: FormData): Promise<void> {
  const viewer = await requireViewer("/people/[userId] submitRoles");
  const userId = String(data.get("id") ?? "");
  const outcome = await whenDiskFails(pageOf(userId), () => changeRoles(viewer, userId, data));
  redirect(`${pageOf(userId)}?${outcome.kind === "done" ? "done=roles" : `why=${outcome.why}`}`);
}

export async function makeColleagueLink(data: FormData): Promise<void> {
  const viewer = await requireViewer("/people/[userId] makeColleagueLink");
  const userId = String(data.get("id") ?? "");
  const outcome = await whenDiskFails(pageOf(userId), () => makePasswordLink(viewer, userId));
  redirect(`${pageOf(userId)}?${outcome.kind === "done" ? `made=${outcome.made?.id ?? ""}` : `why=${outcome.why}`}`);
}

export async function endColleague(data: FormData): Promise<void> {
  const viewer = await requireViewer("/people/[userId] endColleague");
  const userId = String(data.get("id") ?? "");
  const outcome = await whenDiskFails(pageOf(userId), () => endAccess(viewer, userId));
  redirect(outcome.kind === "done" ? "/people?done=ended" : `${pageOf(userId)}?why=${outcome.why}`);
}

export async function sendColleagueLink(data: FormData): Promise<void> {
  const viewer = await requireViewer("/people/[userId] sendColleagueLink");
  const page = pageOf(String(data.get("id") ?? ""));
  const link = String(data.get("link") ?? "");
  const outcome = await whenDiskFails(page, () => mailLink(viewer, link));
  redirect(
    outcome.kind === "done" ? `${page}?done=mailed` : `${page}?made=${encodeURIComponent(link)}&mail=${outcome.why}`,
  );
}
