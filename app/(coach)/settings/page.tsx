import type { AskedForm } from "../../_server/draft/draft-forms";
import { requireViewer } from "../../_server/gate";
import { loadFrame } from "../../_server/load-frame";
import { loadSettings } from "../../_server/settings/load-settings";
import { Form } from "../../_ui/form/form";
import { Frame } from "../../_ui/frame/frame";
import { PageHead } from "../../_ui/part/part";
import { TextPart } from "../../_ui/text-page/text-page";
import { submitSettings } from "./actions";

interface Asked {
  readonly searchParams: Promise<AskedForm>;
}

export default async function SettingsRoute({ searchParams }: Asked) {
  const viewer = await requireViewer("/settings");
  const model = await loadSettings(viewer, await searchParams);
  return (
    <Frame model={loadFrame(viewer)} current="settings">
      {model.form ? (
        <Form model={model.form} action={submitSettings} />
      ) : (
        <PageHead title={model.heading} lede={model.lede} />
      )}
      {model.parts.map((part) => (
        <TextPart key={part.heading} part={part} />
      ))}
      {model.other ? <Form model={model.other} action="/api/academy" /> : null}
    </Frame>
  );
}
