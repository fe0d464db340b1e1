import { loadAcademyTakeOut } from "../../_server/archive/load-take-out";
import { type AskedForm, requireDraftId } from "../../_server/draft/draft-forms";
import { requireViewer } from "../../_server/gate";
import { loadKeysDoor } from "../../_server/import/load-keys";
import { loadFrame } from "../../_server/load-frame";
import { loadRereadsDoor } from "../../_server/reread/load-rereads";
import { loadNotesDoor } from "../../_server/session/note-codings";
import { loadClubsDoor } from "../../_server/settings/club-desk";
import { loadSwitch } from "../../_server/settings/load-switch";
import { loadSettingsForm } from "../../_server/settings/settings-desk";
import { Form } from "../../_ui/form/form";
import { Frame } from "../../_ui/frame/frame";
import { TextPart } from "../../_ui/text-page/text-page";
import { submitSettings, switchAcademy } from "./actions";

interface Asked {
  readonly searchParams: Promise<AskedForm>;
}

export default async function SettingsRoute({ searchParams }: Asked) {
  const viewer = await requireViewer();
  const { draft, dropped } = await searchParams;
  const form = loadSettingsForm(viewer, requireDraftId("/settings", draft, dropped), dropped);
  const change = await loadSwitch(viewer);
  return (
    <Frame model={loadFrame(viewer)} current="settings">
      <Form model={form} action={submitSettings} />
      <TextPart part={loadClubsDoor(viewer)} />
      <TextPart part={loadRereadsDoor(viewer)} />
      <TextPart part={loadKeysDoor(viewer)} />
      <TextPart part={loadNotesDoor(viewer)} />
      <TextPart part={loadAcademyTakeOut(viewer)} />
      {change ? <Form model={change} action={switchAcademy} /> : null}
    </Frame>
  );
}
