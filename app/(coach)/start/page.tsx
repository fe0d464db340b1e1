import { type AskedForm, requireDraftId } from "../../_server/draft/draft-forms";
import { requireViewer } from "../../_server/gate";
import { loadFrame } from "../../_server/load-frame";
import { loadStartForm } from "../../_server/settings/settings-desk";
import { Form } from "../../_ui/form/form";
import { Frame } from "../../_ui/frame/frame";
import { submitStart } from "./actions";

interface Asked {
  readonly searchParams: Promise<AskedForm>;
}

export default async function StartRoute({ searchParams }: Asked) {
  const viewer = await requireViewer();
  const { draft, dropped } = await searchParams;
  const form = loadStartForm(viewer, requireDraftId("/start", draft, dropped), dropped);
  return (
    <Frame model={loadFrame(viewer)} current="settings">
      <Form model={form} action={submitStart} />
    </Frame>
  );
}
