import { notFound } from "next/navigation";
import { type AskedForm, requireDraftId } from "../../../../_server/draft/draft-forms";
import { requireViewer } from "../../../../_server/gate";
import { loadFrame } from "../../../../_server/load-frame";
import { loadDefinition, loadDefinitionForm } from "../../../../_server/settings/definition-desk";
import { Frame } from "../../../../_ui/frame/frame";
import { FormParts } from "../../../../_ui/happen/form-parts";
import { HappenPage } from "../../../../_ui/happen/happen-page";
import { submitDefinitionChange } from "./actions";

interface Asked {
  readonly params: Promise<{ readonly ownId: string }>;
  readonly searchParams: Promise<AskedForm>;
}

export async function generateMetadata({ params }: Asked) {
  const viewer = await requireViewer("/settings/fundamentals/[ownId]");
  return { title: loadDefinition(viewer, (await params).ownId)?.documentTitle };
}

export default async function DefinitionRoute({ params, searchParams }: Asked) {
  const viewer = await requireViewer("/settings/fundamentals/[ownId]");
  const { ownId } = await params;
  const { draft, dropped } = await searchParams;
  const model = loadDefinition(viewer, ownId);
  if (model === null) notFound();
  const draftId = requireDraftId(`/settings/fundamentals/${encodeURIComponent(ownId)}`, draft, dropped);
  const form = loadDefinitionForm(viewer, ownId, draftId, dropped);
  return (
    <Frame model={loadFrame(viewer)} current="settings">
      <HappenPage model={model}>
        {form === null ? null : <FormParts model={form} action={submitDefinitionChange} />}
      </HappenPage>
    </Frame>
  );
}
