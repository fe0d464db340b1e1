import { requireViewer } from "../../../../_server/gate";
import { loadFrame } from "../../../../_server/load-frame";
import { loadSavedGroup } from "../../../../_server/session/load-group";
import { Frame } from "../../../../_ui/frame/frame";
import { TextPage } from "../../../../_ui/text-page/text-page";

interface Asked {
  readonly searchParams: Promise<{ readonly group?: string }>;
}

export default async function SavedGroupRoute({ searchParams }: Asked) {
  const viewer = await requireViewer("/record/group/saved");
  return (
    <Frame model={loadFrame(viewer)} current="record">
      <TextPage model={loadSavedGroup(viewer, (await searchParams).group)} />
    </Frame>
  );
}
