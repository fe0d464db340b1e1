import { boardTitle, loadBoard } from "../../../_server/academy/load-board";
import { requireViewer } from "../../../_server/gate";
import { loadFrame } from "../../../_server/load-frame";
import { Board } from "../../../_ui/academy/board";
import { Frame } from "../../../_ui/frame/frame";

export async function generateMetadata() {
  return { title: boardTitle(await requireViewer("/academy/board")) };
}

export default async function BoardRoute() {
  const viewer = await requireViewer("/academy/board");
  return (
    <Frame model={loadFrame(viewer)} current="academy">
      <Board model={await loadBoard(viewer)} />
    </Frame>
  );
}
