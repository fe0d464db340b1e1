"use server";

import { redirect } from "next/navigation";
import { whenDiskFails } from "../../../../_server/door/when-disk-fails";
import { requireStudent } from "../../../../_server/gate";
import { keepPlanForm, movePlanBack, noteReminded, pagePressedOn, tellPlan } from "../../../../_server/plan/plan-desk";

/** Keeps the plan of a film as it was told. */
export async function submitPlan(data: FormData): Promise<void> {
  const viewer = await requireStudent("/students/[studentId]/plan submitPlan", String(data.get("studentId") ?? ""));
  const outcome = await tellPlan(viewer, data);
  const page = `/students/${viewer.student.studentId}/plan`;
  redirect(
    outcome.kind === "told"
      ? `${page}?told=yes&club=${encodeURIComponent(outcome.clubGroup)}#send`
      : `${page}?draft=${outcome.draftId}#change`,
  );
}

/** The same page anew: what it says follows from what is ticked. */
export async function workOutPlan(data: FormData): Promise<void> {
  const viewer = await requireStudent("/students/[studentId]/plan workOutPlan", String(data.get("studentId") ?? ""));
  redirect(`/students/${viewer.student.studentId}/plan?draft=${keepPlanForm(viewer, data)}`);
}

/** Takes a plan back, or puts it back. */
export async function submitPlanBack(data: FormData): Promise<void> {
  const viewer = await requireStudent("/students/[studentId]/plan submitPlanBack", String(data.get("studentId") ?? ""));
  const page = pagePressedOn(viewer, data);
  const wish = data.get("wish") === "put" ? "put" : "take";
  await whenDiskFails(page, () => movePlanBack(viewer, String(data.get("planId") ?? ""), wish));
  redirect(page);
}

/** Notes that the family was reminded of a film that it promised. */
export async function pressReminded(data: FormData): Promise<void> {
  const viewer = await requireStudent("/students/[studentId]/plan pressReminded", String(data.get("studentId") ?? ""));
  const page = pagePressedOn(viewer, data);
  await whenDiskFails(page, () => noteReminded(viewer, String(data.get("planId") ?? "")));
  redirect(page);
}
