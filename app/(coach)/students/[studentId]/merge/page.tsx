import { notFound } from "next/navigation";
import { type AskedForm, requireDraftId } from "../../../../_server/draft/draft-forms";
import { requireStudent } from "../../../../_server/gate";
import { loadFrame } from "../../../../_server/load-frame";
import { loadMoveForm } from "../../../../_server/session/move-desk";
import { Form } from "../../../../_ui/form/form";
import { Frame } from "../../../../_ui/frame/frame";
import { submitMerge } from "./actions";

interface Asked {
  readonly params: Promise<{ readonly studentId: string }>;
  readonly searchParams: Promise<AskedForm>;
}

export default async function MergeRoute({ params, searchParams }: Asked) {
  const viewer = await requireStudent("/students/[studentId]/merge", (await params).studentId);
  const { draft, dropped } = await searchParams;
  const draftId = requireDraftId(`/students/${viewer.student.studentId}/merge`, draft, dropped);
  const form = loadMoveForm(viewer, { kind: "merge", sessionId: null }, draftId, dropped);
  if (!form) notFound();
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <Form model={form} action={submitMerge} />
    </Frame>
  );
}
