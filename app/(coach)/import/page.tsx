import { requireViewer } from "../../_server/gate";
import { loadUploadPage } from "../../_server/import/load-import";
import { loadPastDoor } from "../../_server/import/past-imports";
import { loadFrame } from "../../_server/load-frame";
import { Frame } from "../../_ui/frame/frame";
import { Import } from "../../_ui/import/import";
import { TextPart } from "../../_ui/text-page/text-page";

interface Asked {
  readonly searchParams: Promise<{ readonly problem?: string }>;
}

export default async function ImportRoute({ searchParams }: Asked) {
  const viewer = await requireViewer("/import");
  return (
    <Frame model={loadFrame(viewer)} current="import">
      <Import model={loadUploadPage(viewer, (await searchParams).problem)} />
      <TextPart part={loadPastDoor(viewer)} />
    </Frame>
  );
}
