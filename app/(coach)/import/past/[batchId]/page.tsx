import { notFound } from "next/navigation";
import { requireViewer } from "../../../../_server/gate";
import { loadRunning } from "../../../../_server/import/import-running";
import { loadPastImport } from "../../../../_server/import/past-import";
import { loadFrame } from "../../../../_server/load-frame";
import { Frame } from "../../../../_ui/frame/frame";
import { PastImport } from "../../../../_ui/import/past-import";
import { Running } from "../../../../_ui/import/running";
import { undoImport } from "./actions";

interface Asked {
  readonly params: Promise<{ readonly batchId: string }>;
  readonly searchParams: Promise<{ readonly problem?: string }>;
}

export default async function PastImportRoute({ params, searchParams }: Asked) {
  const viewer = await requireViewer("/import/past/[batchId]");
  const { batchId } = await params;
  const running = loadRunning(viewer, batchId);
  const model = running ? null : loadPastImport(viewer, batchId, (await searchParams).problem);
  if (!running && !model) notFound();
  return (
    <Frame model={loadFrame(viewer)} current="import">
      {running ? <Running model={running} stop={undoImport} /> : null}
      {model ? <PastImport model={model} action={undoImport} /> : null}
    </Frame>
  );
}
