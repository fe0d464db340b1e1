import { notFound } from "next/navigation";
import { type AskedForm, requireDraftId } from "../../../../../_server/draft/draft-forms";
import { requireStudent } from "../../../../../_server/gate";
import { loadFrame } from "../../../../../_server/load-frame";
import { loadEvent } from "../../../../../_server/season/load-events";
import { Form } from "../../../../../_ui/form/form";
import { Frame } from "../../../../../_ui/frame/frame";
import { HappenPage } from "../../../../../_ui/happen/happen-page";
import { PartForm } from "../../../../../_ui/happen/part-form";
import { submitEventBack, submitRebaselines } from "./actions";

interface Asked {
  readonly params: Promise<{ readonly studentId: string; readonly eventId: string }>;
  readonly searchParams: Promise<AskedForm>;
}

export default async function EventRoute({ params, searchParams }: Asked) {
  const { studentId, eventId } = await params;
  const viewer = await requireStudent("/students/[studentId]/events/[eventId]", studentId);
  const { draft, dropped } = await searchParams;
  const page = `/students/${viewer.student.studentId}/events/${encodeURIComponent(eventId)}`;
  const room = loadEvent(viewer, eventId, requireDraftId(page, draft, dropped), dropped);
  if (!room) notFound();
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <HappenPage model={room.page}>
        {room.rebaseline === null ? null : <PartForm model={room.rebaseline} action={submitRebaselines} />}
        <Form model={room.back} action={submitEventBack} />
      </HappenPage>
    </Frame>
  );
}
