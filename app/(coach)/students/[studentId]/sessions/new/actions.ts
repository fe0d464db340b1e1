"use server";

import { redirect } from "next/navigation";
import { whileSignedIn } from "../../../../../_server/access/while-signed-in";
import { orNothing, whenDiskFails } from "../../../../../_server/door/when-disk-fails";
import { requireStudent, requireViewer } from "../../../../../_server/gate";
import { answerCaptures, keepForAnswer } from "../../../../../_server/session/capture-desk";
import { keepGridChoice, turnGrid } from "../../../../../_server/session/grid-desk";
import { answerNote, settleNote, singleNote } from "../../../../../_server/session/note-desk";
import { addSession } from "../../../../../_server/session/session-desk";

export async function submitSession(data: FormData): Promise<void> {
  const viewer = await requireStudent(
    "/students/[studentId]/sessions/new submitSession",
    String(data.get("studentId") ?? ""),
  );
  const outcome = await addSession(viewer, data);
  const page = `/students/${viewer.student.studentId}`;
  redirect(
    outcome.kind === "added"
      ? `${page}/sessions/${outcome.sessionId}/saved`
      : `${page}/sessions/new?draft=${outcome.draftId}`,
  );
}

export async function askCaptures(data: FormData) {
  return whileSignedIn([], async () =>
    answerCaptures(
      await requireStudent("/students/[studentId]/sessions/new askCaptures", String(data.get("studentId") ?? "")),
      data,
    ),
  );
}

export async function showCaptures(data: FormData): Promise<void> {
  const viewer = await requireStudent(
    "/students/[studentId]/sessions/new showCaptures",
    String(data.get("studentId") ?? ""),
  );
  redirect(`/students/${viewer.student.studentId}/sessions/new?draft=${keepForAnswer(viewer, data)}#films`);
}

export async function askNote(studentId: string, data: FormData) {
  return whileSignedIn(null, async () =>
    answerNote(
      await requireStudent("/students/[studentId]/sessions/new askNote", studentId),
      data,
      singleNote(studentId),
    ),
  );
}

export async function showNote(studentId: string, data: FormData): Promise<void> {
  const viewer = await requireStudent("/students/[studentId]/sessions/new showNote", studentId);
  const page = `/students/${viewer.student.studentId}/sessions/new`;
  const settled = await whenDiskFails(page, () => settleNote(viewer, data, singleNote(studentId)));
  redirect(`${page}?draft=${keepForAnswer(viewer, settled)}#note-${studentId}`);
}

export async function keepGrid(data: FormData): Promise<void> {
  // How a grid is shown is worth no leaving of the page: the next choice is kept.
  await whileSignedIn(undefined, async () => {
    const viewer = await requireViewer("/students/[studentId]/sessions/new keepGrid");
    orNothing(() => keepGridChoice(viewer, data));
  });
}

export async function turnLines(data: FormData): Promise<void> {
  const viewer = await requireStudent(
    "/students/[studentId]/sessions/new turnLines",
    String(data.get("studentId") ?? ""),
  );
  orNothing(() => turnGrid(viewer));
  redirect(`/students/${viewer.student.studentId}/sessions/new?draft=${keepForAnswer(viewer, data)}#grid`);
}

/** The same form anew: its columns follow the clubs that it names. */
export async function refreshForm(data: FormData): Promise<void> {
  const viewer = await requireStudent(
    "/students/[studentId]/sessions/new refreshForm",
    String(data.get("studentId") ?? ""),
  );
  redirect(`/students/${viewer.student.studentId}/sessions/new?draft=${keepForAnswer(viewer, data)}`);
}
