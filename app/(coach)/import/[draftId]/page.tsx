import { requireViewer } from "../../../_server/gate";
import { loadFrame } from "../../../_server/load-frame";
import { loadPreviewPage } from "../../../_server/load-import";
import { Frame } from "../../../_ui/frame/frame";
import { Import } from "../../../_ui/import/import";
import { answerImport } from "./actions";

interface Asked {
  readonly params: Promise<{ readonly draftId: string }>;
}

export default async function PreviewRoute({ params }: Asked) {
  const viewer = await requireViewer();
  const model = loadPreviewPage(viewer, (await params).draftId);
  return (
    <Frame model={loadFrame(viewer)} current="import">
      <Import model={model} action={answerImport} />
    </Frame>
  );
}
