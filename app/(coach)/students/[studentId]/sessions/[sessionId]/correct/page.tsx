import { notFound } from "next/navigation";
import { type AskedForm, requireDraftId } from "../../../../../../_server/draft/draft-forms";
import { requireStudent } from "../../../../../../_server/gate";
import { loadFrame } from "../../../../../../_server/load-frame";
import { loadCorrectForm } from "../../../../../../_server/session/correct-desk";
import { Form } from "../../../../../../_ui/form/form";
import { Frame } from "../../../../../../_ui/frame/frame";
import { submitCorrection } from "./actions";

interface Asked {
  readonly params: Promise<{ readonly studentId: string; readonly sessionId: string }>;
  readonly searchParams: Promise<AskedForm>;
}

export default async function CorrectRoute({ params, searchParams }: Asked) {
  const { studentId, sessionId } = await params;
  const viewer = await requireStudent("/students/[studentId]/sessions/[sessionId]/correct", studentId);
  const { draft, dropped } = await searchParams;
  const page = `/students/${viewer.student.studentId}/sessions/${encodeURIComponent(sessionId)}/correct`;
  const form = loadCorrectForm(viewer, sessionId, requireDraftId(page, draft, dropped), dropped);
  if (!form) notFound();
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <Form model={form} action={submitCorrection} />
    </Frame>
  );
}
