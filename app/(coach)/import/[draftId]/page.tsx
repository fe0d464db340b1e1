import { requireViewer } from "../../../_server/gate";
import { loadArchivePreview, loadPreviewPage } from "../../../_server/import/load-import";
import { loadFrame } from "../../../_server/load-frame";
import { Frame } from "../../../_ui/frame/frame";
import { ArchivePreview } from "../../../_ui/import/archive-preview";
import { Import } from "../../../_ui/import/import";
import { answerImport } from "./actions";

interface Asked {
  readonly params: Promise<{ readonly draftId: string }>;
}

export default async function PreviewRoute({ params }: Asked) {
  const viewer = await requireViewer("/import/[draftId]");
  const { draftId } = await params;
  const archive = await loadArchivePreview(viewer, draftId);
  if (archive)
    return (
      <Frame model={loadFrame(viewer)} current="import">
        <ArchivePreview model={archive} action={answerImport} />
      </Frame>
    );
  const model = await loadPreviewPage(viewer, draftId);
  return (
    <Frame model={loadFrame(viewer)} current="import">
      <Import model={model} action={answerImport} />
    </Frame>
  );
}
