import { requireDraftId } from "../../../_server/draft/draft-forms";
import { requireViewer } from "../../../_server/gate";
import { loadFrame } from "../../../_server/load-frame";
import { loadStudentForm } from "../../../_server/session/load-forms";
import { Form } from "../../../_ui/form/form";
import { Frame } from "../../../_ui/frame/frame";
import { submitStudent } from "./actions";

interface Asked {
  readonly searchParams: Promise<{ readonly draft?: string; readonly dropped?: string }>;
}

export default async function NewStudentRoute({ searchParams }: Asked) {
  const viewer = await requireViewer("/students/new");
  const { draft, dropped } = await searchParams;
  const draftId = requireDraftId("/students/new", draft, dropped);
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <Form model={loadStudentForm(viewer, draftId, dropped)} action={submitStudent} />
    </Frame>
  );
}
