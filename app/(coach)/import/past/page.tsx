import { requireViewer } from "../../../_server/gate";
import { loadPastImports } from "../../../_server/import/past-imports";
import { loadFrame } from "../../../_server/load-frame";
import { Frame } from "../../../_ui/frame/frame";
import { PastImports } from "../../../_ui/import/past-imports";

export default async function PastImportsRoute() {
  const viewer = await requireViewer("/import/past");
  return (
    <Frame model={loadFrame(viewer)} current="import">
      <PastImports model={loadPastImports(viewer)} />
    </Frame>
  );
}
