import { requireStudent } from "../../../../_server/gate";
import { loadFrame } from "../../../../_server/load-frame";
import { loadDrills } from "../../../../_server/season/load-drills";
import { Frame } from "../../../../_ui/frame/frame";
import { HappenPage } from "../../../../_ui/happen/happen-page";
import { pressWaiting } from "./actions";

interface Asked {
  readonly params: Promise<{ readonly studentId: string }>;
}

export async function generateMetadata({ params }: Asked) {
  return {
    title: loadDrills(await requireStudent("/students/[studentId]/drills", (await params).studentId)).documentTitle,
  };
}

export default async function DrillsRoute({ params }: Asked) {
  const viewer = await requireStudent("/students/[studentId]/drills", (await params).studentId);
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <HappenPage model={loadDrills(viewer)} press={pressWaiting} />
    </Frame>
  );
}
