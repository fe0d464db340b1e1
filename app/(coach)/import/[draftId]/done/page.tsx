import { redirect } from "next/navigation";
import { requireViewer } from "../../../../_server/gate";
import { buildOutcomePage, findOutcome } from "../../../../_server/import-outcome";
import { loadFrame } from "../../../../_server/load-frame";
import { Frame } from "../../../../_ui/frame/frame";
import { Import } from "../../../../_ui/import/import";

interface Asked {
  readonly params: Promise<{ readonly draftId: string }>;
}

export default async function DoneRoute({ params }: Asked) {
  const viewer = await requireViewer();
  const { draftId } = await params;
  const outcome = findOutcome(viewer, draftId);
  // Not confirmed yet: the preview says so, and whether there is such a file at all.
  if (!outcome) redirect(`/import/${draftId}`);
  return (
    <Frame model={loadFrame(viewer)} current="import">
      <Import model={buildOutcomePage(viewer.words, outcome)} />
    </Frame>
  );
}
