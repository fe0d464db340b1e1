import { redirect } from "next/navigation";
import { requireViewer } from "../../../../_server/gate";
import { buildOutcomePage, findOutcome } from "../../../../_server/import/import-outcome";
import { loadRunning } from "../../../../_server/import/import-running";
import { loadFrame } from "../../../../_server/load-frame";
import { Frame } from "../../../../_ui/frame/frame";
import { Import } from "../../../../_ui/import/import";
import { Running } from "../../../../_ui/import/running";
import { stopImport } from "./actions";

interface Asked {
  readonly params: Promise<{ readonly draftId: string }>;
}

export default async function DoneRoute({ params }: Asked) {
  const viewer = await requireViewer("/import/[draftId]/done");
  const { draftId } = await params;
  const running = loadRunning(viewer, draftId);
  const outcome = running ? null : findOutcome(viewer, draftId);
  // Not confirmed yet: the preview says so, and whether there is such a file at all.
  if (!running && !outcome) redirect(`/import/${draftId}`);
  return (
    <Frame model={loadFrame(viewer)} current="import">
      {running ? <Running model={running} stop={stopImport} /> : null}
      {outcome ? <Import model={buildOutcomePage(viewer.words, outcome)} /> : null}
    </Frame>
  );
}
