import { notFound } from "next/navigation";
import { requireStudent } from "../../../../../../_server/gate";
import { loadFrame } from "../../../../../../_server/load-frame";
import { loadNotePage } from "../../../../../../_server/session/load-note";
import { Frame } from "../../../../../../_ui/frame/frame";
import { SessionNote } from "../../../../../../_ui/note/session-note";
import { submitNoteTap } from "./actions";

interface Asked {
  readonly params: Promise<{ readonly studentId: string; readonly sessionId: string }>;
}

export default async function SessionNoteRoute({ params }: Asked) {
  const { studentId, sessionId } = await params;
  const viewer = await requireStudent("/students/[studentId]/sessions/[sessionId]/note", studentId);
  const model = loadNotePage(viewer, sessionId);
  if (!model) notFound();
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <SessionNote model={model} action={submitNoteTap} />
    </Frame>
  );
}
