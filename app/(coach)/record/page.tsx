import { loadUnfinishedPart } from "../../_server/draft/unfinished";
import { requireViewer } from "../../_server/gate";
import { loadFrame } from "../../_server/load-frame";
import { loadRecordPage } from "../../_server/session/load-forms";
import { Frame } from "../../_ui/frame/frame";
import { UnfinishedPart } from "../../_ui/keep/unfinished";
import { TextPage } from "../../_ui/text-page/text-page";

export default async function RecordRoute() {
  const viewer = await requireViewer("/record");
  return (
    <Frame model={loadFrame(viewer)} current="record">
      <TextPage model={loadRecordPage(viewer)} first={<UnfinishedPart model={loadUnfinishedPart(viewer)} />} />
    </Frame>
  );
}
