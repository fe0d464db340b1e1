import { type AskedForm, requireDraftId } from "../../../../../_server/draft/draft-forms";
import { loadFamilyRequest } from "../../../../../_server/family/load-family-request";
import { requireStudent } from "../../../../../_server/gate";
import { loadFrame } from "../../../../../_server/load-frame";
import { Frame } from "../../../../../_ui/frame/frame";
import { People } from "../../../../../_ui/people/people";
import { settleFamilyRequest } from "./actions";

interface Asked {
  readonly params: Promise<{ readonly studentId: string; readonly requestId: string }>;
  readonly searchParams: Promise<AskedForm>;
}

const ACTIONS = { settle: settleFamilyRequest };

export async function generateMetadata({ params }: Asked) {
  const { words } = await requireStudent("/students/[studentId]/family/[requestId]", (await params).studentId);
  return { title: words.say("document-title", { page: words.say("family-links.document-title") }) };
}

export default async function FamilyRequestRoute({ params, searchParams }: Asked) {
  const { studentId, requestId } = await params;
  const viewer = await requireStudent("/students/[studentId]/family/[requestId]", studentId);
  const { draft, dropped } = await searchParams;
  const draftId = requireDraftId(`/students/${viewer.student.studentId}/family/${requestId}`, draft, dropped);
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <People model={loadFamilyRequest(viewer, requestId, { draftId, dropped })} actions={ACTIONS} />
    </Frame>
  );
}
