import { requireViewer } from "../../_server/gate";
import { loadFrame } from "../../_server/load-frame";
import { loadDuePage } from "../../_server/plan/load-due";
import { DuePage } from "../../_ui/due/due-page";
import { Frame } from "../../_ui/frame/frame";
import { pressReminder } from "./actions";

export async function generateMetadata() {
  return { title: loadDuePage(await requireViewer("/due")).documentTitle };
}

export default async function DueRoute() {
  const viewer = await requireViewer("/due");
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <DuePage model={loadDuePage(viewer)} remind={pressReminder} />
    </Frame>
  );
}
