import { type AskedForm, requireDraftId } from "../../../_server/draft/draft-forms";
import { requireViewer } from "../../../_server/gate";
import { loadFrame } from "../../../_server/load-frame";
import { loadKeepingForm, loadKeepingRoom } from "../../../_server/settings/keeping-desk";
import { Form } from "../../../_ui/form/form";
import { Frame } from "../../../_ui/frame/frame";
import { BackLink } from "../../../_ui/part/back-link";
import { TextPart } from "../../../_ui/text-page/text-page";
import { submitKeeping } from "./actions";

interface Asked {
  readonly searchParams: Promise<AskedForm>;
}

export async function generateMetadata() {
  return { title: loadKeepingRoom(await requireViewer("/settings/privacy")).documentTitle };
}

export default async function KeepingRoute({ searchParams }: Asked) {
  const viewer = await requireViewer("/settings/privacy");
  const { draft, dropped } = await searchParams;
  const draftId = requireDraftId("/settings/privacy", draft, dropped);
  const room = loadKeepingRoom(viewer);
  return (
    <Frame model={loadFrame(viewer)} current="settings">
      <Form
        model={loadKeepingForm(viewer, draftId, dropped)}
        action={submitKeeping}
        before={<BackLink link={room.back} />}
      />
      <TextPart part={room.reasons} />
    </Frame>
  );
}
