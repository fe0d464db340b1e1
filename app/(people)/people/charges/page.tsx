import { requireDraftId } from "../../../_server/draft/draft-forms";
import { requireViewer } from "../../../_server/gate";
import { loadFrame } from "../../../_server/load-frame";
import { type ChargesWish, loadCharges } from "../../../_server/people/load-charges";
import { Frame } from "../../../_ui/frame/frame";
import { People } from "../../../_ui/people/people";
import { submitCharges } from "./actions";

interface Asked {
  readonly searchParams: Promise<ChargesWish>;
}

const ACTIONS = { give: submitCharges };

export default async function ChargesRoute({ searchParams }: Asked) {
  const viewer = await requireViewer("/people/charges");
  const asked = await searchParams;
  const draftId = requireDraftId("/people/charges", asked.draft, asked.dropped, { done: asked.done });
  return (
    <Frame model={loadFrame(viewer)} current="people">
      <People model={loadCharges(viewer, draftId, asked)} actions={ACTIONS} />
    </Frame>
  );
}
