import { requireDraftId } from "../../../../_server/draft/draft-forms";
import { type FamilyLinksWish, loadFamilyLinks } from "../../../../_server/family/load-family-links";
import { requireStudent } from "../../../../_server/gate";
import { loadFrame } from "../../../../_server/load-frame";
import { Frame } from "../../../../_ui/frame/frame";
import { People } from "../../../../_ui/people/people";
import { makeFamilyLink, renewFamilyLink, revokeFamilyLink } from "./actions";

interface Asked {
  readonly params: Promise<{ readonly studentId: string }>;
  readonly searchParams: Promise<FamilyLinksWish>;
}

const ACTIONS = { make: makeFamilyLink, renew: renewFamilyLink, revoke: revokeFamilyLink };

export async function generateMetadata({ params }: Asked) {
  const { words } = await requireStudent("/students/[studentId]/family", (await params).studentId);
  return { title: words.say("document-title", { page: words.say("family-links.document-title") }) };
}

export default async function FamilyLinksRoute({ params, searchParams }: Asked) {
  const viewer = await requireStudent("/students/[studentId]/family", (await params).studentId);
  const wish = await searchParams;
  const { draft, dropped, made, done } = wish;
  const draftId = requireDraftId(`/students/${viewer.student.studentId}/family`, draft, dropped, { made, done });
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <People model={loadFamilyLinks(viewer, draftId, wish)} actions={ACTIONS} />
    </Frame>
  );
}
