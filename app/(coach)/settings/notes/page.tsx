import { requireViewer } from "../../../_server/gate";
import { loadFrame } from "../../../_server/load-frame";
import { loadNoteCodings } from "../../../_server/session/note-codings";
import { Frame } from "../../../_ui/frame/frame";
import { NoteCodings } from "../../../_ui/note/note-codings";
import { submitTakeBack } from "./actions";

export default async function NoteCodingsRoute() {
  const viewer = await requireViewer("/settings/notes");
  return (
    <Frame model={loadFrame(viewer)} current="settings">
      <NoteCodings model={loadNoteCodings(viewer)} action={submitTakeBack} />
    </Frame>
  );
}
