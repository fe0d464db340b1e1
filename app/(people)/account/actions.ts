"use server";

import { redirect } from "next/navigation";
import { whenDiskFails } from "../../_server/door/when-disk-fails";
import { requireLogIn, requireViewer } from "../../_server/gate";
import { changePassword, endLogIns, saveAccount } from "../../_server/people/account-desk";

export async function submitAccount(data: FormData): Promise<void> {
  const outcome = saveAccount(await requireViewer("/account submitAccount"), data);
  redirect(outcome.kind === "saved" ? "/account?done=saved" : `/account?draft=${outcome.draftId}`);
}

export async function changeOwnPassword(data: FormData): Promise<void> {
  const { viewer, logIn } = await requireLogIn("/account changeOwnPassword");
  const outcome = await whenDiskFails("/account", () => changePassword(viewer, logIn, data));
  redirect(outcome.kind === "done" ? "/account?done=password" : `/account?why=${outcome.why}`);
}

export async function endOwnLogIns(): Promise<void> {
  const viewer = await requireViewer("/account endOwnLogIns");
  await whenDiskFails("/account", () => endLogIns(viewer));
  redirect("/sign-in?new=out");
}
