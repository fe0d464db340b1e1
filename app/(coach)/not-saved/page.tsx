import { loadNotSaved } from "../../_server/door/load-not-saved";
import { requireViewer } from "../../_server/gate";
import { loadFrame } from "../../_server/load-frame";
import { Frame } from "../../_ui/frame/frame";
import { TextPage } from "../../_ui/text-page/text-page";

interface Asked {
  readonly searchParams: Promise<{ readonly why?: string; readonly back?: string }>;
}

export default async function NotSavedRoute({ searchParams }: Asked) {
  const viewer = await requireViewer("/not-saved");
  return (
    <Frame model={loadFrame(viewer)} current="record">
      <TextPage model={loadNotSaved(viewer, await searchParams)} />
    </Frame>
  );
}
