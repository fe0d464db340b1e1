import { requireDraftId } from "../../../../../_server/draft/draft-forms";
import { requireStudent } from "../../../../../_server/gate";
import { loadFrame } from "../../../../../_server/load-frame";
import { type AskedDrill, loadDrillForm } from "../../../../../_server/season/load-drills";
import { Form } from "../../../../../_ui/form/form";
import { Frame } from "../../../../../_ui/frame/frame";
import { fillDoseAnew, submitDrill } from "./actions";

interface Asked {
  readonly params: Promise<{ readonly studentId: string }>;
  readonly searchParams: Promise<AskedDrill>;
}

export default async function NewDrillRoute({ params, searchParams }: Asked) {
  const viewer = await requireStudent("/students/[studentId]/drills/new", (await params).studentId);
  const { draft, dropped, ...asked } = await searchParams;
  const page = `/students/${viewer.student.studentId}/drills/new`;
  const { instead, again, after, for: fundamental } = asked;
  const draftId = requireDraftId(page, draft, dropped, { instead, again, after, for: fundamental });
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <Form model={loadDrillForm(viewer, draftId, { dropped, ...asked })} action={submitDrill} refresh={fillDoseAnew} />
    </Frame>
  );
}
