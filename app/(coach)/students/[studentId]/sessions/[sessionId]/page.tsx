import { notFound } from "next/navigation";
import { requireStudent } from "../../../../../_server/gate";
import { loadFrame } from "../../../../../_server/load-frame";
import { loadSessionPage } from "../../../../../_server/session/load-history";
import { Frame } from "../../../../../_ui/frame/frame";
import { RecordPage } from "../../../../../_ui/record-page/record-page";
import { submitUndo } from "./actions";

interface Asked {
  readonly params: Promise<{ readonly studentId: string; readonly sessionId: string }>;
  readonly searchParams: Promise<{ readonly told?: string }>;
}

export async function generateMetadata({ params }: Asked) {
  const { studentId, sessionId } = await params;
  return {
    title: loadSessionPage(
      await requireStudent("/students/[studentId]/sessions/[sessionId]", studentId),
      sessionId,
      undefined,
    )?.documentTitle,
  };
}

export default async function SessionRoute({ params, searchParams }: Asked) {
  const { studentId, sessionId } = await params;
  const viewer = await requireStudent("/students/[studentId]/sessions/[sessionId]", studentId);
  const model = loadSessionPage(viewer, sessionId, (await searchParams).told);
  if (!model) notFound();
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <RecordPage model={model} action={submitUndo} />
    </Frame>
  );
}
