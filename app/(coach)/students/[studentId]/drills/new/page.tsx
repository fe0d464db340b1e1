import { requireDraftId } from "../../../../../_server/draft/draft-forms";
import { loadLotPart } from "../../../../../_server/fair/load-fair-tests";
import { requireStudent } from "../../../../../_server/gate";
import { loadFrame } from "../../../../../_server/load-frame";
import { type AskedDrill, loadDrillForm } from "../../../../../_server/season/load-drills";
import { Lot } from "../../../../../_ui/fair/lot";
import { Form } from "../../../../../_ui/form/form";
import { Frame } from "../../../../../_ui/frame/frame";
import { fillDoseAnew, pressLot, submitDrill } from "./actions";

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
  const lot = instead === undefined ? loadLotPart(viewer) : null;
  return (
    <Frame model={loadFrame(viewer)} current="students">
      {lot === null ? null : <Lot model={lot} draw={pressLot} />}
      <Form model={loadDrillForm(viewer, draftId, { dropped, ...asked })} action={submitDrill} refresh={fillDoseAnew} />
    </Frame>
  );
}
