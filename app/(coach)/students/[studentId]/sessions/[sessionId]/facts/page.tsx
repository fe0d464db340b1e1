import { notFound } from "next/navigation";
import { type AskedForm, requireDraftId } from "../../../../../../_server/draft/draft-forms";
import { requireStudent } from "../../../../../../_server/gate";
import { loadFrame } from "../../../../../../_server/load-frame";
import { loadFactsForm } from "../../../../../../_server/session/facts-desk";
import { Form } from "../../../../../../_ui/form/form";
import { Frame } from "../../../../../../_ui/frame/frame";
import { submitFacts } from "./actions";

interface Asked {
  readonly params: Promise<{ readonly studentId: string; readonly sessionId: string }>;
  readonly searchParams: Promise<AskedForm>;
}

export default async function FactsRoute({ params, searchParams }: Asked) {
  const { studentId, sessionId } = await params;
  const viewer = await requireStudent("/students/[studentId]/sessions/[sessionId]/facts", studentId);
  const { draft, dropped } = await searchParams;
  const page = `/students/${viewer.student.studentId}/sessions/${encodeURIComponent(sessionId)}/facts`;
  const form = loadFactsForm(viewer, sessionId, requireDraftId(page, draft, dropped), dropped);
  if (!form) notFound();
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <Form model={form} action={submitFacts} />
    </Frame>
  );
}
