import { loadClubsDoor } from "../../_server/club-desk";
import { requireViewer } from "../../_server/gate";
import { loadFrame } from "../../_server/load-frame";
import { loadKeysDoor } from "../../_server/load-keys";
import { loadRereadsDoor } from "../../_server/load-rereads";
import { loadSwitch } from "../../_server/load-switch";
import { loadAcademyTakeOut } from "../../_server/load-take-out";
import { loadNotesDoor } from "../../_server/note-codings";
import { loadSettingsForm } from "../../_server/settings-desk";
import { Form } from "../../_ui/form/form";
import { Frame } from "../../_ui/frame/frame";
import { TextPart } from "../../_ui/text-page/text-page";
import { submitSettings, switchAcademy } from "./actions";

interface Asked {
  readonly searchParams: Promise<{ readonly draft?: string }>;
}

export default async function SettingsRoute({ searchParams }: Asked) {
  const viewer = await requireViewer();
  const change = await loadSwitch(viewer);
  return (
    <Frame model={loadFrame(viewer)} current="settings">
      <Form model={loadSettingsForm(viewer, (await searchParams).draft)} action={submitSettings} />
      <TextPart part={loadClubsDoor(viewer)} />
      <TextPart part={loadRereadsDoor(viewer)} />
      <TextPart part={loadKeysDoor(viewer)} />
      <TextPart part={loadNotesDoor(viewer)} />
      <TextPart part={loadAcademyTakeOut(viewer)} />
      {change ? <Form model={change} action={switchAcademy} /> : null}
    </Frame>
  );
}
