import { requireViewer } from "../../_server/gate";
import { loadFrame } from "../../_server/load-frame";
import { loadRereads } from "../../_server/reread/load-rereads";
import { Frame } from "../../_ui/frame/frame";
import { Rereads } from "../../_ui/rereads/rereads";

export default async function RereadsRoute() {
  const viewer = await requireViewer("/rereads");
  return (
    <Frame model={loadFrame(viewer)} current="settings">
      <Rereads model={loadRereads(viewer)} />
    </Frame>
  );
}
