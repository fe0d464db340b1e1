"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { whenDiskFails } from "../../_server/door/when-disk-fails";
import { requireViewer } from "../../_server/gate";
import { markDealtWith, markSeen } from "../../_server/roster/mark-seen";
import { forgetRosterView, keepRosterView } from "../../_server/roster/view-desk";

/** Puts away what is newly proved, until something else is. */
export async function pressSeen(): Promise<void> {
  const viewer = await requireViewer("/students pressSeen");
  await whenDiskFails("/students", () => markSeen(viewer));
  revalidatePath("/students");
  redirect("/students");
}

/** Puts lines of the brief away until something about them changes, or brings them back. */
export async function pressDealtWith(data: FormData): Promise<void> {
  const viewer = await requireViewer("/students pressDealtWith");
  await whenDiskFails("/students", () => markDealtWith(viewer, data));
  revalidatePath("/students");
  redirect(data.has("back") ? "/students?aside=shown#brief" : "/students");
}

/** Keeps the view that the viewer looks at: their roster opens in it from now on. */
export async function keepView(data: FormData): Promise<void> {
  const viewer = await requireViewer("/students keepView");
  const query = data.get("query");
  await whenDiskFails("/students", () => keepRosterView(viewer, typeof query === "string" ? query : ""));
  revalidatePath("/students");
  redirect("/students?done=kept");
}

/** Lets go of the kept view. */
export async function forgetView(): Promise<void> {
  const viewer = await requireViewer("/students forgetView");
  await whenDiskFails("/students", () => forgetRosterView(viewer));
  revalidatePath("/students");
  redirect("/students?done=forgotten");
}
