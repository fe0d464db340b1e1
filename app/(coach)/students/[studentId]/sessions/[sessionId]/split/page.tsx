import { notFound } from "next/navigation";
import { type AskedForm, requireDraftId } from "../../../../../../_server/draft/draft-forms";
import { requireStudent } from "../../../../../../_server/gate";
import { loadFrame } from "../../../../../../_server/load-frame";
import { loadMoveForm } from "../../../../../../_server/session/move-desk";
import { Form } from "../../../../../../_ui/form/form";
import { Frame } from "../../../../../../_ui/frame/frame";
import { submitSplit } from "./actions";

interface Asked {
  readonly params: Promise<{ readonly studentId: string; readonly sessionId: string }>;
  readonly searchParams: Promise<AskedForm>;
}

export default async function SplitRoute({ params, searchParams }: Asked) {
  const { studentId, sessionId } = await params;
  const viewer = await requireStudent("/students/[studentId]/sessions/[sessionId]/split", studentId);
  const { draft, dropped } = await searchParams;
  const page = `/students/${viewer.student.studentId}/sessions/${encodeURIComponent(sessionId)}/split`;
  const form = loadMoveForm(viewer, { kind: "split", sessionId }, requireDraftId(page, draft, dropped), dropped);
  if (!form) notFound();
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <Form model={form} action={submitSplit} />
    </Frame>
  );
}
