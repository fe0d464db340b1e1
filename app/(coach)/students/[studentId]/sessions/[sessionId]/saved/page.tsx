import { requireStudent } from "../../../../../../_server/gate";
import { loadFrame } from "../../../../../../_server/load-frame";
import { loadSavedFor } from "../../../../../../_server/session/load-saved-for";
import { Frame } from "../../../../../../_ui/frame/frame";
import { Saved } from "../../../../../../_ui/saved/saved";

interface Asked {
  readonly params: Promise<{ readonly studentId: string; readonly sessionId: string }>;
}

export default async function SavedSessionRoute({ params }: Asked) {
  const { studentId, sessionId } = await params;
  const viewer = await requireStudent("/students/[studentId]/sessions/[sessionId]/saved", studentId);
  return (
    <Frame model={loadFrame(viewer)} current="record">
      <Saved model={await loadSavedFor(viewer, sessionId)} />
    </Frame>
  );
}
