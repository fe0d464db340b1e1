import { requireDraftId } from "../../../../../_server/draft-forms";
import { loadEventForm } from "../../../../../_server/event-desk";
import { requireStudent } from "../../../../../_server/gate";
import { loadFrame } from "../../../../../_server/load-frame";
import { Form } from "../../../../../_ui/form/form";
import { Frame } from "../../../../../_ui/frame/frame";
import { submitEvent } from "./actions";

interface Asked {
  readonly params: Promise<{ readonly studentId: string }>;
  readonly searchParams: Promise<{ readonly draft?: string; readonly dropped?: string }>;
}

export default async function NewEventRoute({ params, searchParams }: Asked) {
  const viewer = await requireStudent((await params).studentId);
  const { draft, dropped } = await searchParams;
  const draftId = requireDraftId(`/students/${viewer.student.studentId}/events/new`, draft, dropped);
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <Form model={loadEventForm(viewer, draftId, dropped)} action={submitEvent} />
    </Frame>
  );
}
