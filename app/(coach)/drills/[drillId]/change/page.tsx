import { notFound } from "next/navigation";
import { type AskedForm, requireDraftId } from "../../../../_server/draft/draft-forms";
import { loadLibraryDrill, loadLibraryForm } from "../../../../_server/drill/library-desk";
import { requireViewer } from "../../../../_server/gate";
import { loadFrame } from "../../../../_server/load-frame";
import { Frame } from "../../../../_ui/frame/frame";
import { HappenPage } from "../../../../_ui/happen/happen-page";
import { PartForm } from "../../../../_ui/happen/part-form";
import { submitDrillChange } from "./actions";

interface Asked {
  readonly params: Promise<{ readonly drillId: string }>;
  readonly searchParams: Promise<AskedForm>;
}

export async function generateMetadata({ params }: Asked) {
  const viewer = await requireViewer("/drills/[drillId]/change");
  return { title: loadLibraryDrill(viewer, (await params).drillId)?.documentTitle };
}

export default async function ChangeDrillRoute({ params, searchParams }: Asked) {
  const viewer = await requireViewer("/drills/[drillId]/change");
  const { drillId } = await params;
  const { draft, dropped } = await searchParams;
  const model = loadLibraryDrill(viewer, drillId);
  if (model === null) notFound();
  const draftId = requireDraftId(`/drills/${encodeURIComponent(drillId)}/change`, draft, dropped);
  const form = loadLibraryForm(viewer, drillId, draftId, dropped);
  return (
    <Frame model={loadFrame(viewer)} current="academy">
      <HappenPage model={model}>
        {form === null ? null : <PartForm model={form} action={submitDrillChange} />}
      </HappenPage>
    </Frame>
  );
}
