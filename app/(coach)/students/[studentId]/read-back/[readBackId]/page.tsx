import { notFound } from "next/navigation";
import { type AskedForm, requireDraftId } from "../../../../../_server/draft/draft-forms";
import { requireStudent } from "../../../../../_server/gate";
import { loadFrame } from "../../../../../_server/load-frame";
import { loadReadBack } from "../../../../../_server/season/load-read-back";
import { Form } from "../../../../../_ui/form/form";
import { Frame } from "../../../../../_ui/frame/frame";
import { HappenPage } from "../../../../../_ui/happen/happen-page";
import { submitReadBack, submitReadBackDrop } from "./actions";

interface Asked {
  readonly params: Promise<{ readonly studentId: string; readonly readBackId: string }>;
  readonly searchParams: Promise<AskedForm>;
}

export default async function ReadBackRoute({ params, searchParams }: Asked) {
  const { studentId, readBackId } = await params;
  const viewer = await requireStudent("/students/[studentId]/read-back/[readBackId]", studentId);
  const { draft, dropped } = await searchParams;
  const page = `/students/${viewer.student.studentId}/read-back/${encodeURIComponent(readBackId)}`;
  const room = loadReadBack(viewer, readBackId, requireDraftId(page, draft, dropped), dropped);
  if (!room) notFound();
  return (
    <Frame model={loadFrame(viewer)} current="students">
      {room.kind === "over" ? (
        <HappenPage model={room.page} />
      ) : (
        <>
          <Form model={room.form} action={submitReadBack} />
          <Form model={room.drop} action={submitReadBackDrop} />
        </>
      )}
    </Frame>
  );
}
