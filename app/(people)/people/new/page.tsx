import { requireDraftId } from "../../../_server/draft/draft-forms";
import { requireViewer } from "../../../_server/gate";
import { loadFrame } from "../../../_server/load-frame";
import { loadInviteForm } from "../../../_server/people/invite-desk";
import { Form } from "../../../_ui/form/form";
import { Frame } from "../../../_ui/frame/frame";
import { submitInvitation } from "./actions";

interface Asked {
  readonly searchParams: Promise<{ readonly draft?: string; readonly dropped?: string }>;
}

export default async function InviteRoute({ searchParams }: Asked) {
  const viewer = await requireViewer("/people/new");
  const { draft, dropped } = await searchParams;
  const draftId = requireDraftId("/people/new", draft, dropped);
  return (
    <Frame model={loadFrame(viewer)} current="people">
      <Form model={loadInviteForm(viewer, draftId, dropped)} action={submitInvitation} />
    </Frame>
  );
}
