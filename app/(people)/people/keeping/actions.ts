"use server";

import { redirect } from "next/navigation";
import { whenDiskFails } from "../../../_server/door/when-disk-fails";
import { requireViewer } from "../../../_server/gate";
import { holdNotice, sayClockIsRight } from "../../../_server/keeping/keeping-desk";

const PAGE = "/people/keeping";

/** Keeps after all what was announced. */
export async function submitHold(data: FormData): Promise<void> {
  const viewer = await requireViewer("/people/keeping submitHold");
  const came = await whenDiskFails(PAGE, () => holdNotice(viewer, data, "hold"));
  const id = encodeURIComponent(String(data.get("noticeId") ?? ""));
  redirect(came === "why" ? `${PAGE}?why=${id}` : `${PAGE}?done=${came}`);
}

/** Lets the time of what was kept run again. */
export async function submitRelease(data: FormData): Promise<void> {
  const viewer = await requireViewer("/people/keeping submitRelease");
  const came = await whenDiskFails(PAGE, () => holdNotice(viewer, data, "release"));
  redirect(`${PAGE}?done=${came}`);
}

/** Says that the clock is right. */
export async function submitClock(): Promise<void> {
  const viewer = await requireViewer("/people/keeping submitClock");
  await whenDiskFails(PAGE, () => sayClockIsRight(viewer));
  redirect(`${PAGE}?done=settled`);
}
