import { type AskedForm, requireDraftId } from "../../../_server/draft/draft-forms";
import { requireViewer } from "../../../_server/gate";
import { loadOwningForm, loadOwningPage } from "../../../_server/goals/owning-desk";
import { loadFrame } from "../../../_server/load-frame";
import { Frame } from "../../../_ui/frame/frame";
import { HappenPage } from "../../../_ui/happen/happen-page";
import { PartForm } from "../../../_ui/happen/part-form";
import { submitOwning } from "./actions";

interface Asked {
  readonly searchParams: Promise<AskedForm>;
}

export async function generateMetadata() {
  return { title: loadOwningPage(await requireViewer("/settings/owning")).documentTitle };
}

export default async function OwningRoute({ searchParams }: Asked) {
  const viewer = await requireViewer("/settings/owning");
  const { draft, dropped } = await searchParams;
  const draftId = requireDraftId("/settings/owning", draft, dropped);
  return (
    <Frame model={loadFrame(viewer)} current="settings">
      <HappenPage model={loadOwningPage(viewer)}>
        <PartForm model={loadOwningForm(viewer, draftId, dropped)} action={submitOwning} />
      </HappenPage>
    </Frame>
  );
}
