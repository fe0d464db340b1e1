import { notFound } from "next/navigation";
import { requireStudent } from "../../../../../../../_server/gate";
import { loadFrame } from "../../../../../../../_server/load-frame";
import { asidePart, loadAsideDone } from "../../../../../../../_server/session/load-set-aside";
import { Frame } from "../../../../../../../_ui/frame/frame";
import { Saved } from "../../../../../../../_ui/saved/saved";

interface Asked {
  readonly params: Promise<{ readonly studentId: string; readonly sessionId: string }>;
  readonly searchParams: Promise<{ readonly part?: string; readonly of?: string }>;
}

export default async function AsideDoneRoute({ params, searchParams }: Asked) {
  const { studentId, sessionId } = await params;
  const viewer = await requireStudent("/students/[studentId]/sessions/[sessionId]/aside/done", studentId);
  const { part, of } = await searchParams;
  const model = await loadAsideDone(viewer, sessionId, asidePart(part), of);
  if (!model) notFound();
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <Saved model={model} />
    </Frame>
  );
}
