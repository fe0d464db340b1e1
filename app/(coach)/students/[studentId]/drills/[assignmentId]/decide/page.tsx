import { notFound } from "next/navigation";
import { type AskedForm, requireDraftId } from "../../../../../../_server/draft/draft-forms";
import { loadDecide } from "../../../../../../_server/drill/load-decide";
import { requireStudent } from "../../../../../../_server/gate";
import { loadFrame } from "../../../../../../_server/load-frame";
import { Frame } from "../../../../../../_ui/frame/frame";
import { HappenPage } from "../../../../../../_ui/happen/happen-page";
import { PartForm } from "../../../../../../_ui/happen/part-form";
import { submitDrillDecision } from "./actions";

interface Asked {
  readonly params: Promise<{ readonly studentId: string; readonly assignmentId: string }>;
  readonly searchParams: Promise<AskedForm>;
}

export default async function DecideRoute({ params, searchParams }: Asked) {
  const { studentId, assignmentId } = await params;
  const viewer = await requireStudent("/students/[studentId]/drills/[assignmentId]/decide", studentId);
  const { draft, dropped } = await searchParams;
  const page = `/students/${viewer.student.studentId}/drills/${encodeURIComponent(assignmentId)}/decide`;
  const room = await loadDecide(viewer, assignmentId, requireDraftId(page, draft, dropped), dropped);
  if (!room) notFound();
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <HappenPage model={room.page}>
        {room.form === null ? null : <PartForm model={room.form} action={submitDrillDecision} />}
      </HappenPage>
    </Frame>
  );
}
