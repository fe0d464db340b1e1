import { notFound } from "next/navigation";
import { type AskedForm, requireDraftId } from "../../../../../_server/draft/draft-forms";
import { requireStudent } from "../../../../../_server/gate";
import { loadFrame } from "../../../../../_server/load-frame";
import { loadDrill } from "../../../../../_server/season/load-drills";
import { Form } from "../../../../../_ui/form/form";
import { Frame } from "../../../../../_ui/frame/frame";
import { HappenPage } from "../../../../../_ui/happen/happen-page";
import { PartForm } from "../../../../../_ui/happen/part-form";
import { submitDrillBack, submitDrillStop } from "./actions";

interface Asked {
  readonly params: Promise<{ readonly studentId: string; readonly assignmentId: string }>;
  readonly searchParams: Promise<AskedForm>;
}

export default async function DrillRoute({ params, searchParams }: Asked) {
  const { studentId, assignmentId } = await params;
  const viewer = await requireStudent("/students/[studentId]/drills/[assignmentId]", studentId);
  const { draft, dropped } = await searchParams;
  const page = `/students/${viewer.student.studentId}/drills/${encodeURIComponent(assignmentId)}`;
  const room = await loadDrill(viewer, assignmentId, requireDraftId(page, draft, dropped), dropped);
  if (!room) notFound();
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <HappenPage model={room.page}>
        {room.stop === null ? null : <PartForm model={room.stop} action={submitDrillStop} />}
        <Form model={room.back} action={submitDrillBack} />
      </HappenPage>
    </Frame>
  );
}
