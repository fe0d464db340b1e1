import { requireViewer } from "../../_server/gate";
import { loadFrame } from "../../_server/load-frame";
import { loadStartForm } from "../../_server/settings/settings-desk";
import { Form } from "../../_ui/form/form";
import { Frame } from "../../_ui/frame/frame";
import { submitStart } from "./actions";

interface Asked {
  readonly searchParams: Promise<{ readonly draft?: string }>;
}

export default async function StartRoute({ searchParams }: Asked) {
  const viewer = await requireViewer();
  return (
    <Frame model={loadFrame(viewer)} current="settings">
      <Form model={loadStartForm(viewer, (await searchParams).draft)} action={submitStart} />
    </Frame>
  );
}
