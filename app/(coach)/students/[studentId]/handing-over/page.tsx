import { requireDraftId } from "../../../../_server/draft/draft-forms";
import { requireStudent } from "../../../../_server/gate";
import { loadFrame } from "../../../../_server/load-frame";
import { type AskedHanding, loadHanding } from "../../../../_server/people/load-handing";
import { Frame } from "../../../../_ui/frame/frame";
import { People } from "../../../../_ui/people/people";
import { submitHanding, submitHandingBack } from "./actions";

interface Asked {
  readonly params: Promise<{ readonly studentId: string }>;
  readonly searchParams: Promise<AskedHanding>;
}

const ACTIONS = { hand: submitHanding, back: submitHandingBack };

export async function generateMetadata({ params }: Asked) {
  const viewer = await requireStudent("/students/[studentId]/handing-over", (await params).studentId);
  return { title: viewer.words.say("document-title", { page: viewer.words.say("handing.document-title") }) };
}

export default async function HandingOverRoute({ params, searchParams }: Asked) {
  const viewer = await requireStudent("/students/[studentId]/handing-over", (await params).studentId);
  const asked = await searchParams;
  const { draft, dropped, to, kind, done } = asked;
  const page = `/students/${viewer.student.studentId}/handing-over`;
  const draftId = requireDraftId(page, draft, dropped, { to, kind, done });
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <People model={loadHanding(viewer, draftId, asked)} actions={ACTIONS} />
    </Frame>
  );
}
