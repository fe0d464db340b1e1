"use server";

import { headers } from "next/headers";
import { redirect } from "next/navigation";
import { handOnCookies } from "../../../_server/access/hand-on-cookies";
import { whenDiskFails } from "../../../_server/door/when-disk-fails";
import { requireViewer } from "../../../_server/gate";
import type { Outcome } from "../../../_server/people/account-desk";
import { beginSecondStep, dropSecondStep, proveSecondStep } from "../../../_server/people/second-step-desk";

const PAGE = "/account/second-step";

function leadBack(outcome: Outcome): never {
  redirect(outcome.kind === "done" ? PAGE : `${PAGE}?why=${outcome.why}`);
}

export async function beginOwnSecondStep(data: FormData): Promise<void> {
  const viewer = await requireViewer("/account/second-step beginOwnSecondStep");
  const sent = await headers();
  leadBack(await whenDiskFails(PAGE, () => beginSecondStep(viewer, sent, data)));
}

export async function proveOwnSecondStep(data: FormData): Promise<void> {
  const viewer = await requireViewer("/account/second-step proveOwnSecondStep");
  const sent = await headers();
  const moved = await whenDiskFails(PAGE, () => proveSecondStep(viewer, sent, data));
  await handOnCookies(moved.cookies);
  leadBack(moved.outcome);
}

export async function dropOwnSecondStep(data: FormData): Promise<void> {
  const viewer = await requireViewer("/account/second-step dropOwnSecondStep");
  const sent = await headers();
  const moved = await whenDiskFails(PAGE, () => dropSecondStep(viewer, sent, data));
  await handOnCookies(moved.cookies);
  leadBack(moved.outcome);
}
