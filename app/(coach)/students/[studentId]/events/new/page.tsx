import { requireDraftId } from "../../../../../_server/draft/draft-forms";
import { requireStudent } from "../../../../../_server/gate";
import { loadFrame } from "../../../../../_server/load-frame";
import { type AskedEvent, loadEventForm } from "../../../../../_server/season/load-events";
import { Choices } from "../../../../../_ui/choices/choices";
import { Form } from "../../../../../_ui/form/form";
import { Frame } from "../../../../../_ui/frame/frame";
import { submitEvent } from "./actions";

interface Asked {
  readonly params: Promise<{ readonly studentId: string }>;
  readonly searchParams: Promise<AskedEvent>;
}

export default async function NewEventRoute({ params, searchParams }: Asked) {
  const viewer = await requireStudent("/students/[studentId]/events/new", (await params).studentId);
  const { draft, dropped, kind, instead } = await searchParams;
  const page = `/students/${viewer.student.studentId}/events/new`;
  const draftId = requireDraftId(page, draft, dropped, { kind, instead });
  const { form, kinds } = loadEventForm(viewer, draftId, { dropped, kind, instead });
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <Form model={form} action={submitEvent} before={<Choices {...kinds} />} />
    </Frame>
  );
}
