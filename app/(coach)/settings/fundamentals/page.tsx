import { type AskedForm, requireDraftId } from "../../../_server/draft/draft-forms";
import { requireViewer } from "../../../_server/gate";
import { loadFrame } from "../../../_server/load-frame";
import { loadDefinitionForm, loadDefinitions } from "../../../_server/settings/definition-desk";
import { Frame } from "../../../_ui/frame/frame";
import { FormParts } from "../../../_ui/happen/form-parts";
import { HappenPage } from "../../../_ui/happen/happen-page";
import { submitDefinition } from "./actions";

interface Asked {
  readonly searchParams: Promise<AskedForm>;
}

export async function generateMetadata() {
  return { title: loadDefinitions(await requireViewer("/settings/fundamentals")).documentTitle };
}

export default async function DefinitionsRoute({ searchParams }: Asked) {
  const viewer = await requireViewer("/settings/fundamentals");
  const { draft, dropped } = await searchParams;
  const form = loadDefinitionForm(viewer, null, requireDraftId("/settings/fundamentals", draft, dropped), dropped);
  return (
    <Frame model={loadFrame(viewer)} current="settings">
      <HappenPage model={loadDefinitions(viewer)}>
        {form === null ? null : <FormParts model={form} action={submitDefinition} />}
      </HappenPage>
    </Frame>
  );
}
